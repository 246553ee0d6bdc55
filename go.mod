module ogive

go 1.26.0
