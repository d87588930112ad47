//go:build !linux && !darwin

package sessions

import "io/fs"

// identity is not told here: size and time of the bytes have to do.
func identity(fs.FileInfo) (inode uint64, touched int64) { return 0, 0 }
