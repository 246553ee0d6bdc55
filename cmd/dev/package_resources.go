package main

import (
	"bytes"
	"fmt"
	"image/png"
	"os"
	"time"

	"github.com/tc-hib/winres"
	"github.com/tc-hib/winres/version"
)

// english is Windows' number for the language of the version's words.
const english = 0x0409

// resources is what Windows shows of a program before it is run: its icon, what
// it is, its version and whose it is.
func (a app) resources(file, describes string, at time.Time) (*winres.ResourceSet, error) {
	picture, err := png.Decode(bytes.NewReader(a.icon))
	if err != nil {
		return nil, fmt.Errorf("%s must be a PNG picture: %w", a.Details.Icon, err)
	}
	icon, err := winres.NewIconFromResizedImage(picture, nil)
	if err != nil {
		return nil, fmt.Errorf("make a Windows icon of %s: %w", a.Details.Icon, err)
	}
	set := &winres.ResourceSet{}
	if err := set.SetIcon(winres.Name("APPICON"), icon); err != nil {
		return nil, fmt.Errorf("make a Windows icon of %s: %w", a.Details.Icon, err)
	}
	numbers := a.fourNumbers()
	info := version.Info{FileVersion: numbers, ProductVersion: numbers, Timestamp: at}
	for _, f := range []struct{ key, value string }{
		{version.ProductName, a.Details.Name},
		{version.FileDescription, describes},
		{version.FileVersion, a.Details.Version},
		{version.ProductVersion, a.Details.Version},
		{version.OriginalFilename, file},
		{version.LegalCopyright, "See LICENCES.txt"},
	} {
		if err := info.Set(english, f.key, f.value); err != nil {
			return nil, fmt.Errorf("set %s of %s: %w", f.key, file, err)
		}
	}
	set.SetVersionInfo(info)
	set.SetManifest(winres.AppManifest{
		Compatibility:  winres.Win10AndAbove,
		DPIAwareness:   winres.DPIPerMonitorV2,
		ExecutionLevel: winres.AsInvoker,
		LongPathAware:  true,
	})
	return set, nil
}

// withResources is the built program with its resources put in.
func withResources(built string, set *winres.ResourceSet) ([]byte, error) {
	plain, err := os.ReadFile(built)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := set.WriteToEXE(&out, bytes.NewReader(plain)); err != nil {
		return nil, fmt.Errorf("put icon and version into %s: %w", built, err)
	}
	return out.Bytes(), nil
}
