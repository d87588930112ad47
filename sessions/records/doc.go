// Package records is what a folder of sessions holds, told in one line each:
// for lists, searching, who is due again and how old the cords are.
//
//	list, err := records.Scan(store) // every file, the newest session first, bad files last
//	q, err := records.ParseQuery("climber:demo verdict:fail")
//	for _, e := range list.Find(q) { … }
//
// The files are the truth. What was made of them is kept in a cache beside them,
// which may be lost, damaged or out of date at any time: see cache.go.
package records
