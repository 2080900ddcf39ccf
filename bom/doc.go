// Package bom works out what a build uses, what is to be bought for it and
// what that costs: a takeoff from the solved silos, rounded up to the packs a
// price list sells, priced exactly. It is pure but for the reader a price list
// is read from.
package bom
