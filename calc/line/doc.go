// Package line works the compressed air between the wall and the gun: the
// couplings, filters and valves as ISO 6358 restrictions, the hose as isothermal
// flow with friction, the regulator with its droop, and the march along them.
//
// Every part answers two questions for a known flow: which pressure does it need
// upstream for the one it has downstream, and the other way round. A march along
// the parts, all at the same mass flow, is then exact, where adding up
// conductances is not.
package line
