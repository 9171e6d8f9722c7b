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
)

// Ink colours a piece of a row by its role. It must add nothing that takes a column. A nil
// Ink leaves the piece as it is.
type Ink func(Role, string) string
