package main

import (
	"go/ast"
	"go/token"
	"strings"
)

// statements leaves out, one by one, those that declare nothing. The lines below keep
// their numbers.
func (f *finder) statements(list []ast.Stmt) {
	for _, s := range list {
		if !declares(s) {
			f.put(s.Pos(), s.End(), strings.Repeat("\n", strings.Count(f.said(s), "\n")))
		}
	}
}

// declares says whether a statement is needed by name, or does nothing.
func declares(s ast.Stmt) bool {
	switch s := s.(type) {
	case *ast.DeclStmt, *ast.LabeledStmt, *ast.BlockStmt, *ast.EmptyStmt, *ast.CaseClause, *ast.CommClause:
		return true
	case *ast.AssignStmt:
		return s.Tok == token.DEFINE || quiets(s)
	}
	return false
}

// quiets says whether an assignment goes nowhere.
func quiets(s *ast.AssignStmt) bool {
	for _, to := range s.Lhs {
		if name, ok := to.(*ast.Ident); !ok || name.Name != "_" {
			return false
		}
	}
	return true
}

// returns turns round what a function returns as a bool.
func (f *finder) returns(of *ast.FuncType, body *ast.BlockStmt) {
	if of.Results == nil || body == nil {
		return
	}
	var kinds []string
	for _, field := range of.Results.List {
		for range max(len(field.Names), 1) {
			kinds = append(kinds, f.said(field.Type))
		}
	}
	ast.Inspect(body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.FuncLit:
			return false
		case *ast.ReturnStmt:
			if len(n.Results) == len(kinds) {
				f.turnResults(n.Results, kinds)
			}
		}
		return true
	})
}

func (f *finder) turnResults(results []ast.Expr, kinds []string) {
	for i, r := range results {
		switch said := f.said(r); {
		case kinds[i] != "bool":
		case said == "true":
			f.put(r.Pos(), r.End(), "false")
		case said == "false":
			f.put(r.Pos(), r.End(), "true")
		default:
			f.condition(r)
		}
	}
}
