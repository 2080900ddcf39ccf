// Package sheets sets the document pages of a shop pack: findings, tools, buy
// and cut lists, costs, orders, cutting plans, hours and days, water and seed,
// hole schedule, marking tables, build steps, the traveller and what the numbers
// rest on. Pages are drawings in black and white that a
// reader can follow at arm's length; long text and long tables run on to
// further pages and nothing is ever set outside a page. It lays out what it is
// given and works out nothing about silos or money.
package sheets
