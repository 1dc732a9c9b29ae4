package main

import (
	"os"

	"sipsum/internal/cli"
)

func main() { os.Exit(cli.Main(os.Args[1:], cli.OS())) }
