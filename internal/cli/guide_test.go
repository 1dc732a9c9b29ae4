package cli_test

import (
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The commands of the guides run one after the other, in a folder of their own; each guide checks what it says by itself.
// .ci/run does the same with the program as it is carried to other machines.
func TestGuides(t *testing.T) {
	shell, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("there is no bash")
	}
	for guide, wants := range map[string][]string{"many-drinks": {"parallel", "find", "sort", "cmp"}} {
		t.Run(guide, func(t *testing.T) {
			for _, tool := range wants {
				if _, err := exec.LookPath(tool); err != nil {
					t.Skip("it wants " + tool)
				}
			}
			text, err := os.ReadFile("../../data/guide/" + guide + ".md")
			require.NoError(t, err)
			var script strings.Builder
			blocks := regexp.MustCompile("(?s)```sh\n(.*?)```").FindAllStringSubmatch(string(text), -1)
			require.NotEmpty(t, blocks)
			for _, b := range blocks {
				script.WriteString(b[1])
			}
			cmd := command(t, t.TempDir())
			cmd.Path, cmd.Args, cmd.Dir = shell, []string{"bash", "-euxo", "pipefail", "-c", script.String()}, t.TempDir()
			out, err := cmd.CombinedOutput()
			require.NoError(t, err, "%s", out)
		})
	}
}
