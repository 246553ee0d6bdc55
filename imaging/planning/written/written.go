// Package written writes the figures of a plan: as a table for a surgeon to read,
// or as JSON for a program.
//
//	o, err := planning.Open("right-dorsal.plan.json", "", settings)
//	err = written.Table(os.Stdout, "right-dorsal.plan.json", o)
package written

import (
	"bytes"
	"encoding/json"
	"io"

	"ogive/imaging/planning"
)

// JSON writes the figures of a plan as one object; path is the file it was read
// from. A figure that can't be told is absent, and a remark says why.
func JSON(to io.Writer, path string, o planning.Opened) error {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	if err := e.Encode(planText(path, o)); err != nil {
		return err
	}
	_, err := to.Write(out.Bytes())
	return err
}
