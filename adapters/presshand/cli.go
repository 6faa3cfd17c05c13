package main

import (
	"context"
	"errors"
	"fmt"
	"runtime/debug"

	"github.com/alecthomas/kong"

	"presshand/adapters/matrix"
)

// cli is the command line.
type cli struct {
	Version versionFlag `help:"Show the version and stop."`

	Chat chatCmd `cmd:"" default:"1" help:"Chat in the terminal."`
	Ask  askCmd  `cmd:"" help:"Answer one message, or one a line from standard input."`
	Demo demoCmd `cmd:"" help:"Show a morning at a boatyard, answered by this program."`

	Serve       serveCmd       `cmd:"" help:"Serve the chat services that a configuration turns on."`
	Check       checkCmd       `cmd:"" help:"Say whether serve would work, without posting anything."`
	MatrixSetup matrixSetupCmd `cmd:"" help:"Make the identity of a Matrix account, once."`

	Loads   loadsCmd   `cmd:"" help:"List the load book."`
	Export  exportCmd  `cmd:"" help:"Write the load book for a spreadsheet or a program."`
	Backup  backupCmd  `cmd:"" help:"Write all that the store holds into a file."`
	Restore restoreCmd `cmd:"" help:"Fill an empty store from a backup."`
	Forget  forgetCmd  `cmd:"" help:"Blank a person in the store."`
}

const description = "Answers questions about pressing wood under vacuum."

// errParsed stops the parser after it showed the help or the version.
var errParsed = errors.New("nothing more to do")

// run is the command, with everything that it touches as a parameter.
func run(ctx context.Context, args []string, s streams) (code int) {
	defer func() {
		switch p := recover(); p {
		case nil:
		case errParsed:
			code = exitOK
		default:
			panic(p)
		}
	}()
	var c cli
	parser, err := kong.New(&c,
		kong.Name("presshand"), kong.Description(description),
		kong.Writers(s.out, s.err), kong.Exit(func(int) { panic(errParsed) }),
		kong.BindTo(ctx, (*context.Context)(nil)), kong.Bind(s),
	)
	if err != nil {
		return exitCode(err, s.err)
	}
	k, err := parser.Parse(args)
	if err != nil {
		fmt.Fprintln(s.err, "presshand: "+oneLine(err.Error())+"; “presshand --help” shows what there is")
		return exitUsage
	}
	return exitCode(k.Run(), s.err)
}

type versionFlag bool

// BeforeReset shows the version before anything else is looked at.
func (versionFlag) BeforeReset(k *kong.Kong) error {
	fmt.Fprintln(k.Stdout, "presshand "+version())
	k.Exit(exitOK)
	return nil
}

// version is the module's, the commit that it was built from, and whether
// Matrix encryption is in it.
func version() string {
	said := "unreleased"
	info, ok := debug.ReadBuildInfo()
	if !ok {
		info = &debug.BuildInfo{}
	}
	if v := info.Main.Version; v != "" && v != "(devel)" {
		said = v
	}
	commit, changed := "commit unknown", ""
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision" && len(s.Value) >= 12:
			commit = "commit " + s.Value[:12]
		case s.Key == "vcs.modified" && s.Value == "true":
			changed = ", changed since"
		}
	}
	sealed := "with Matrix encryption"
	if !matrix.Encrypts {
		sealed = "without Matrix encryption"
	}
	return fmt.Sprintf("%s (%s%s, %s)", said, commit, changed, sealed)
}
