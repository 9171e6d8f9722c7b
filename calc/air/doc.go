// Package air holds the properties of dry and moist air: viscosity and density,
// what the humidity means (dew point, wet bulb, humidity ratio), and the pressure
// at an altitude. It knows no hose and no gun.
package air
