// Package drill plans the ground drill and holds what was seen in it against the
// model.
//
// Geometry is proved by hanging on it, low and slowly: the hitches are eased by
// hand until the backup tether carries. Nobody is dropped. What the model
// expects is told before each step with its uncertainty, so that what is seen
// can disagree with it. [New] plans a drill, [Look] reviews one.
package drill
