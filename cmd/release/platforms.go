package main

import "strings"

// platforms are what a release is built for. Android runs it in a terminal on
// the phone.
var platforms = []platform{
	{"linux", "amd64"},
	{"linux", "arm64"},
	{"darwin", "amd64"},
	{"darwin", "arm64"},
	{"windows", "amd64"},
	{"android", "arm64"},
}

type platform struct{ os, arch string }

func (p platform) String() string { return p.os + "/" + p.arch }

// env is what makes the Go tool build for p.
func (p platform) env() []string {
	return []string{"CGO_ENABLED=0", "GOOS=" + p.os, "GOARCH=" + p.arch}
}

// file is the name of the binary for p.
func (p platform) file(version string) string {
	name := strings.Join([]string{"hangtape", version, p.os, p.arch}, "_")
	if p.os == "windows" {
		name += ".exe"
	}
	return name
}
