// Command hangtape walks an instructor through a fitting session at the base
// of the tree, and judges, keeps and reviews fittings.
package main

func main() {}
