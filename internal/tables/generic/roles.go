package generic

// role is what a row of the mapping file speaks of.
type role string

// Roles of the file and its marks: the text is in "as".
const (
	roleFile      role = "file"
	roleSheet     role = "sheet"
	roleHeader    role = "header"
	roleSeparator role = "separator"
	roleDecimal   role = "decimal"
	roleState     role = "state"
	roleTitle     role = "title"
	roleEdition   role = "edition"
	rolePublisher role = "publisher"
	roleLicence   role = "licence"
	roleCitation  role = "citation"
	roleTrace     role = "trace"
	roleUnknown   role = "unknown"
	roleMissing   role = "missing"
	roleBelow     role = "below"
)

// Roles of columns.
const (
	roleCode    role = "code"
	roleName    role = "name"
	roleGroup   role = "group"
	roleDensity role = "density"
	roleEdible  role = "edible"
	roleNote    role = "note"
	roleValue   role = "value"
	roleSD      role = "sd"
	roleN       role = "n"
	roleIgnore  role = "ignore"
)

// about are the roles that stand once, and whether they must.
var about = map[role]bool{
	roleFile: true, roleTitle: true, roleEdition: true, roleLicence: true, rolePublisher: false, roleCitation: false,
	roleSheet: false, roleHeader: false, roleSeparator: false, roleDecimal: false, roleState: false,
}

// marks are the roles of cells that are no numbers; they may stand several times.
var marks = map[role]bool{roleTrace: true, roleUnknown: true, roleMissing: true, roleBelow: true}

// ofColumns are the roles of columns, and whether one may stand several times.
var ofColumns = map[role]bool{
	roleCode: false, roleName: true, roleGroup: false, roleDensity: false, roleEdible: false, roleNote: true,
	roleValue: true, roleSD: true, roleN: true, roleIgnore: true,
}
