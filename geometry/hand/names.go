package hand

import (
	"fmt"
	"slices"
	"strings"
)

func nameOr[T ~int](names map[T]string, v T, kind string) string {
	if n, ok := names[v]; ok {
		return n
	}
	return fmt.Sprintf("unknown %s %d", kind, int(v))
}

func parse[T ~int](names map[T]string, name, kind string) (T, error) {
	for v, n := range names {
		if n == name {
			return v, nil
		}
	}
	return 0, fmt.Errorf("%s %q is unknown; use one of %s", kind, name, strings.Join(sorted(names), ", "))
}

func sorted[T ~int](names map[T]string) []string {
	keys := make([]T, 0, len(names))
	for v := range names {
		keys = append(keys, v)
	}
	slices.Sort(keys)
	list := make([]string, len(keys))
	for i, v := range keys {
		list[i] = names[v]
	}
	return list
}
