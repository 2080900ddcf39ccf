// Package sea gives the properties of the water a nursery pumps: density,
// viscosity and vapour pressure of sea, brackish or fresh water at the pressure
// of the air, from its salinity and temperature. Every relation names its
// source and where it stops; outside that an error is returned, never a guess.
package sea
