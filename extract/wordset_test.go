package extract

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

// TestFamilies asks for each family of words that the code asks for, and finds those that nothing
// asks for any more.
func TestFamilies(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	asked := map[string]bool{}
	for _, f := range files {
		file, err := parser.ParseFile(token.NewFileSet(), f, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if call, ok := n.(*ast.CallExpr); ok {
				if f, ok := call.Fun.(*ast.Ident); ok && f.Name == "wordsOf" {
					if s, ok := call.Args[0].(*ast.BasicLit); ok {
						name, err := strconv.Unquote(s.Value)
						if err != nil {
							t.Fatal(err)
						}
						asked[name] = true
						if lexicon.Family(name) == "" {
							t.Errorf("%s: the family %q has no words", f, name)
						}
					}
				}
			}
			return true
		})
	}
	for _, name := range partSorts {
		if name = "kind of part, " + name; lexicon.Family(name) != "" {
			asked[name] = true
		}
	}
	text, err := os.ReadFile("lexicon/data/families.txt")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range lexicon.Families() {
		if !asked[name] && !strings.Contains(string(text), "+"+strings.ReplaceAll(name, " ", "-")) {
			t.Errorf("nothing asks for the family %q", name)
		}
	}
}
