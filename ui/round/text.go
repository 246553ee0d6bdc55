package round

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"

	"ogive/imaging/rounds"
	"ogive/imaging/wording"
)

// textOf is what a round came to as text, with its learning curve and the caution.
func textOf(r *rounds.Round, curve []rounds.Point) string {
	sum := r.Summary()
	lines := []string{
		lang.L("Ogive: a round of {{.Number}} pictures", map[string]any{"Number": len(r.Order)}),
		fmt.Sprintf("%s, %s, %s, %s", r.Begun.Local().Format("2006-01-02 15:04"), r.Observer, strings.ToLower(kindWords(r.Setup.Kind)), strings.ToLower(picturesWords(r.Setup))),
		"",
		lang.L("Right answers: {{.Share}}", map[string]any{"Share": share(sum.Score)}),
	}
	lines = append(lines, sum.Sentences...)
	lines = append(lines, "")
	for _, t := range sum.By {
		lines = append(lines, wording.Sentence(askedWords(t.Of))+"\t"+share(t.Share))
	}
	for _, m := range sum.Confusions {
		lines = append(lines, "", lang.L("What was taken for what: {{.What}} (rows: it was; columns: you said)", map[string]any{"What": askedWords(m.Of)}))
		lines = append(lines, confusionLines(m)...)
	}
	if len(sum.Landmarks) > 0 {
		lines = append(lines, "", lang.L("Marks beside the true ones, in mm (mean, interval at 95 per cent; distal and ulnar are +)"))
		lines = append(lines, tabbed(scatterRows(sum.Landmarks))...)
	}
	if len(sum.Figures) > 0 {
		lines = append(lines, "", lang.L("Figures from the marks, less the true ones"))
		lines = append(lines, tabbed(figureRows(sum.Figures))...)
	}
	lines = append(lines, "", againstWords(r.Limits), "", lang.L("Round by round, right answers"))
	for i, p := range curve {
		line := fmt.Sprintf("%d\t%s\t%s", i+1, p.Begun.Local().Format("2006-01-02"), share(p.Score))
		if p.Repeat {
			line += "\t" + lang.L("pictures seen before")
		}
		lines = append(lines, line)
	}
	return strings.Join(append(lines, "", wording.Term(wording.Caution)), "\n") + "\n"
}

func confusionLines(m rounds.Mistaken) []string {
	head := ""
	for _, name := range m.Names {
		head += "\t" + findingWords(name)
	}
	lines := []string{head}
	for i, counts := range m.Counts {
		row := findingWords(m.Names[i])
		for _, n := range counts {
			row += fmt.Sprintf("\t%d", n)
		}
		lines = append(lines, row)
	}
	return lines
}

func tabbed(rows [][]string) []string {
	var lines []string
	for _, row := range rows {
		lines = append(lines, strings.Join(row, "\t"))
	}
	return lines
}
