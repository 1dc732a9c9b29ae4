package main

import (
	"go/ast"
	"go/token"
	"slices"
	"strconv"
	"strings"
)

// operators says what an operator becomes, alone or before an equals sign.
var operators = map[token.Token]string{
	token.LSS: ">=", token.LEQ: ">", token.GTR: "<=", token.GEQ: "<", token.EQL: "!=", token.NEQ: "==",
	token.ADD: "-", token.SUB: "+", token.MUL: "/", token.QUO: "*", token.REM: "*",
	token.LAND: "||", token.LOR: "&&",
	token.ADD_ASSIGN: "-=", token.SUB_ASSIGN: "+=", token.MUL_ASSIGN: "/=", token.QUO_ASSIGN: "*=",
	token.INC: "--", token.DEC: "++",
}

// comparisons are the operators that are turned round.
var comparisons = []token.Token{token.LSS, token.LEQ, token.GTR, token.GEQ, token.EQL, token.NEQ}

// extremes says what the smaller and the larger of two become.
var extremes = map[string]string{"min": "max", "max": "min"}

// visit finds the places of a node, and says whether there may be more within.
func (f *finder) visit(n ast.Node) bool {
	switch n := n.(type) {
	case nil:
	case *ast.GenDecl:
		return !enumeration(n)
	case *ast.BinaryExpr:
		f.operator(n.Op, n.OpPos)
	case *ast.AssignStmt:
		f.operator(n.Tok, n.TokPos)
	case *ast.IncDecStmt:
		f.operator(n.Tok, n.TokPos)
	case *ast.UnaryExpr:
		if n.Op == token.SUB || n.Op == token.NOT {
			f.put(n.OpPos, n.X.Pos(), "")
		}
	case *ast.BasicLit:
		f.number(n)
	case *ast.IfStmt:
		f.condition(n.Cond)
	case *ast.ForStmt:
		f.condition(n.Cond)
	case *ast.SwitchStmt:
		if n.Tag == nil {
			f.cases(n)
		}
	case *ast.CallExpr:
		f.call(n)
	case *ast.FuncDecl:
		f.returns(n.Type, n.Body)
	case *ast.FuncLit:
		f.returns(n.Type, n.Body)
	case *ast.BlockStmt:
		f.statements(n.List)
	case *ast.CaseClause:
		f.statements(n.Body)
	case *ast.CommClause:
		f.statements(n.Body)
	}
	return !f.idle[n]
}

func (f *finder) operator(is token.Token, at token.Pos) {
	if becomes, ok := operators[is]; ok {
		f.put(at, at+token.Pos(len(is.String())), becomes)
	}
}

// condition turns one round, unless turning its operator does the same.
func (f *finder) condition(c ast.Expr) {
	switch c := c.(type) {
	case nil:
		return
	case *ast.UnaryExpr:
		if c.Op == token.NOT {
			return
		}
	case *ast.BinaryExpr:
		if slices.Contains(comparisons, c.Op) {
			return
		}
	}
	f.put(c.Pos(), c.End(), f.turned(c))
}

func (f *finder) cases(s *ast.SwitchStmt) {
	for _, clause := range s.Body.List {
		for _, c := range clause.(*ast.CaseClause).List {
			f.condition(c)
		}
	}
}

func (f *finder) number(n *ast.BasicLit) {
	if f.idle[n] || n.Kind != token.INT && n.Kind != token.FLOAT {
		return
	}
	after := "(" + n.Value + " + 1)"
	whole, err := strconv.ParseInt(n.Value, 0, 64)
	x, _ := strconv.ParseFloat(strings.ReplaceAll(n.Value, "_", ""), 64)
	switch {
	case err == nil && n.Kind == token.INT:
		after = strconv.FormatInt(whole+1, 10)
	case x > 0 && x < 1:
		after = "(2 * " + n.Value + ")"
	}
	f.put(n.Pos(), n.End(), after)
}

func (f *finder) call(n *ast.CallExpr) {
	name := f.said(n.Fun)
	if becomes, ok := extremes[name]; ok {
		f.put(n.Fun.Pos(), n.Fun.End(), becomes)
	}
	switch _, slice := firstOf(n.Args).(*ast.ArrayType); {
	case name == "make" && slice && len(n.Args) == 3:
		f.idle[n.Args[2]] = true
	case name == "make" && !slice && len(n.Args) == 2, name == "slices.Grow", name == "strconv.ParseFloat", name == "math.Inf":
		f.idle[n.Args[len(n.Args)-1]] = true
	case strings.HasSuffix(name, ".Grow"):
		f.idle[n] = true
	}
}

func firstOf(args []ast.Expr) ast.Expr {
	if len(args) == 0 {
		return nil
	}
	return args[0]
}

// enumeration says whether constants only count up: which number one has is nobody's
// concern.
func enumeration(d *ast.GenDecl) bool {
	counts := false
	if d.Tok == token.CONST {
		ast.Inspect(d, func(n ast.Node) bool {
			name, ok := n.(*ast.Ident)
			counts = counts || ok && name.Name == "iota"
			return true
		})
	}
	return counts
}
