module ogive

go 1.26.0

require (
	github.com/ebitengine/purego v0.8.3 // indirect
	github.com/gen2brain/heic v0.4.5 // indirect
	github.com/rwcarlsen/goexif v0.0.0-20190401172101-9e8deecbddbd // indirect
	github.com/tetratelabs/wazero v1.9.0 // indirect
	golang.org/x/image v0.47.0 // indirect
	gonum.org/v1/gonum v0.17.0 // indirect
	pgregory.net/rapid v1.3.0 // indirect
)
