package draw

// Role is what a piece of a picture stands for. It decides the colour and nothing else:
// each piece has a shape, a letter or a text of its own too.
type Role uint8

// The roles.
const (
	RoleText  Role = iota // names and figures
	RoleAxis              // scales, ticks and frames
	RoleMark              // the value that is shown
	RoleRest              // the same value with no air moving
	RoleGhost             // where the value stood before
	RoleKeep              // the range to keep within
	RoleBand              // the range it likely lies within
	RoleLimit             // what must not be passed
	RoleKept              // what is left
	RoleLost              // what is lost
	RoleWorst             // what is lost most
	RoleGo                // fit to work
	RoleWatch             // to be watched
	RoleWait              // better to wait
	RoleStop              // not to work
	RoleFill              // quiet ground under a line
	RoleOwn               // what the gun itself takes
	RoleTitle             // names a region
)

// rank is which role a cell takes where several meet in it: the one of the highest rank.
var rank = [...]uint8{
	RoleFill: 0, RoleAxis: 1, RoleText: 2, RoleTitle: 3, RoleOwn: 4, RoleLost: 5, RoleKept: 6,
	RoleGo: 7, RoleWatch: 8, RoleWait: 9, RoleStop: 10, RoleBand: 11, RoleKeep: 12, RoleGhost: 13,
	RoleRest: 14, RoleWorst: 15, RoleLimit: 16, RoleMark: 17,
}

// Ink colours a piece of a row by its role. It must add nothing that takes a column. A nil
// Ink leaves the piece as it is.
type Ink func(Role, string) string
