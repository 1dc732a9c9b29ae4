package web_test

import (
	"net/http"
	"net/url"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/reporttest"
)

const draws = "200" // of a page while somebody works

// answer gives a page, or the answer to a form if there is one.
func (s *site) answer(t *testing.T, path string, form url.Values) (int, string) {
	t.Helper()
	if form == nil {
		return s.fetch(t, path)
	}
	return s.post(t, path, form)
}

// Each figure of a panel is that of the document which the command prints.
func TestPanelsTellTheFiguresOfTheDocuments(t *testing.T) {
	s := serve(t, demos(t))
	const drink = "/drink/garden-tide.yaml"
	for _, c := range []struct {
		name, path string
		form       url.Values
		command    []string // its words, then those of the drink
		least      int      // figures of the page
	}{
		{"a food", "/foods/core:lemon-juice", nil, []string{"food", "show", "core:lemon-juice"}, 20},
		{"a food with traces", "/foods/core:honey", nil, []string{"food", "show", "core:honey"}, 20},
		{"a ranking", "/foods/rank?of=malic+acid&without=milk", nil, []string{"food", "rank", "malic", "acid", "--without", "milk"}, 20},
		{"a ranking of liquids", "/foods/rank?of=CAFFN&liquid=yes", nil, []string{"food", "rank", "CAFFN", "--liquid"}, 10},
		{"less sour", drink + "/fit", url.Values{"wish": {"less sour"}}, []string{"fit", "DRINK", "--less", "sour"}, 10},
		{"sweeter by a share", drink + "/fit", url.Values{"wish": {"own"}, "way": {"more"}, "quality": {"sweet"}, "by": {"12"}}, []string{"fit", "DRINK", "--more", "sweet", "--by", "12%"}, 10},
		{"another sweetener", drink + "/swap", url.Values{"food": {"core:sugar-white"}}, []string{"fit", "DRINK", "--swap", "core:sugar-white"}, 5},
		{"a claim", drink + "/claim", url.Values{"check": {"serving(SUGAR) < 10.5 g"}}, []string{"evidence", "DRINK", "--check", "serving(SUGAR) < 10.5 g"}, 1},
		{"a claim that the unknown decides", drink + "/claim", url.Values{"check": {"serving(FASAT) < 0.05 g"}}, []string{"evidence", "DRINK", "--check", "serving(FASAT) < 0.05 g"}, 2},
	} {
		code, page := s.answer(t, c.path, c.form)
		require.Equal(t, http.StatusOK, code, "%s: %s", c.name, page)
		d := s.document(t, c.command)
		figures := figuresOf(page)
		assert.GreaterOrEqual(t, len(figures), c.least, c.name)
		for _, f := range figures {
			of := at(d, strings.Split(f.path, ".")...)
			assert.True(t, shows(f, of), "%s: %s is %q on the page, and %v in the document", c.name, f.path, f.text, of)
		}
	}
	assert.True(t, shows(figure{text: "480", path: "x"}, 478.3))
	assert.False(t, shows(figure{text: "490", path: "x"}, 478.3))
	assert.False(t, shows(figure{text: "480", path: "x"}, nil))
}

// document is what a command prints as JSON; DRINK stands for the drink of the test.
func (s *site) document(t testing.TB, command []string) document {
	t.Helper()
	args := make([]string, len(command))
	for i, word := range command {
		args[i] = strings.Replace(word, "DRINK", s.dir+"/garden-tide.yaml", 1)
	}
	return decoded(t, program(t, append(args, "--format", "json", "--draws", draws)...))
}

// What is asked in vain is answered in words, and with a place where there is one.
func TestPanelsSayWhatIsWrong(t *testing.T) {
	s := serve(t, demos(t))
	const drink = "/drink/garden-tide.yaml"
	for _, c := range []struct {
		path string
		form url.Values
		code int
		says string
	}{
		{drink + "/claim", url.Values{"check": {"serving(SUGER) < 8 g"}}, http.StatusOK, `serving(<mark>S</mark>UGER) &lt; 8 g`},
		{drink + "/claim", url.Values{"check": {"serving(SUGAR) <"}}, http.StatusOK, "<mark> </mark>"},
		{drink + "/claim", url.Values{"check": {strings.Repeat("(", 20000)}}, http.StatusOK, "<mark>"},
		{drink + "/claim", url.Values{"check": {"mass() > 1 g"}, "text": {"drink: X\nbuild:\n  - 10 g core:nothing-such\n"}}, http.StatusUnprocessableEntity, "garden-tide.yaml:3"},
		{drink + "/fit", url.Values{"wish": {"own"}, "way": {"less"}, "quality": {"sour"}, "by": {"-5"}}, http.StatusUnprocessableEntity, "cannot move by"},
		{drink + "/fit", url.Values{"wish": {"own"}, "way": {"less"}, "quality": {"sour"}, "by": {"Inf"}}, http.StatusUnprocessableEntity, "cannot move by"},
		{drink + "/fit", url.Values{"wish": {"own"}, "quality": {"<b>"}}, http.StatusUnprocessableEntity, "there is no quality"},
		{drink + "/fit", url.Values{"wish": {"targets"}}, http.StatusUnprocessableEntity, "has no targets"},
		{drink + "/fit", url.Values{"wish": {"own"}, "way": {"less"}, "quality": {"bitter"}}, http.StatusUnprocessableEntity, "say by how much"},
		{drink + "/swap", url.Values{"food": {"core:honey"}}, http.StatusUnprocessableEntity, "core:honey"},
		{drink + "/swap", url.Values{"food": {"core:sugar-white"}, "without": {"colour"}}, http.StatusUnprocessableEntity, "unknown allergen"},
		{"/drink/absent.yaml/fit", nil, http.StatusNotFound, "absent.yaml"},
		{"/foods/core:nothing-such", nil, 0, "nothing-such"},
		{"/foods/rank?of=SUGER", nil, http.StatusUnprocessableEntity, "SUGAR"},
		{"/foods?q=" + strings.Repeat("a+", 40), nil, http.StatusUnprocessableEntity, "too many to search for"},
		{"/foods?q=zzzzzzzzzz", nil, http.StatusOK, "No food of the tables"},
		{"/foods?q=%00%E2%80%AE%22*)", nil, http.StatusOK, "Find a food"},
	} {
		code, page := s.answer(t, c.path, c.form)
		if c.code != 0 {
			assert.Equal(t, c.code, code, "%s %v", c.path, c.form)
		}
		assert.Contains(t, page, c.says, "%s %v", c.path, c.form)
		assert.NotContains(t, page, "--by", c.path)
	}
}

// No name of a drink, a component or a food is more than a name, on any panel and on what is handed out.
func TestNamesAreNoMoreThanNames(t *testing.T) {
	hostile := strings.Replace(reporttest.HostileDrink(), "serves: 2", "serves: 2\nclaims:\n  - {say: \"<img src=x onerror=alert(1)> \u202Eabc\", check: mass() > 1 g}\ntargets: [serving(SUGAR) <= 8 g]", 1)
	s := serve(t, map[string]string{"hostile.yaml": hostile})
	const drink = "/drink/hostile.yaml"
	for path, form := range map[string]url.Values{
		drink + "/stage": nil, drink + "/stage?to=guest": nil, drink + "/guest?language=de": nil, drink + "/allergens": nil,
		drink + `/guest?language="><script>`: nil, drink + "/fit": {"wish": {"targets"}}, drink + "/swap": {"food": {"core:milk-whole"}},
		drink + "/claim":                           {"say": {"<script>alert(1)</script>"}, "check": {"\"><script>alert(1)</script>"}},
		"/foods?drink=hostile.yaml&q=<script>":     nil,
		"/foods/core:honey?drink=\"><script>x":     nil,
		"/foods/rank?of=<script>&without=<script>": nil,
	} {
		path = strings.NewReplacer("<", "%3C", ">", "%3E", `"`, "%22").Replace(path)
		_, page := s.answer(t, path, form)
		lower := strings.ToLower(page)
		assert.NotContains(t, lower, "<script>", path)
		assert.NotContains(t, lower, "<b>'co'", path)
		assert.NotContains(t, lower, "<img", path)
		assert.NotContains(t, page, "NaN", path)
		assert.NotRegexp(t, `(?i)free from`, page, path)
	}
}

// HTML Tidy has nothing to say of any panel, nor of what is said and handed out.
func TestPanelsAreValid(t *testing.T) {
	tidy := required(t, "tidy")
	s := serve(t, demos(t))
	const drink = "/drink/garden-tide.yaml"
	for path, form := range map[string]url.Values{
		"/foods?q=lemon&drink=garden-tide.yaml": nil, "/foods/core:honey?drink=garden-tide.yaml": nil, "/foods/rank?of=MALAC&without=milk": nil,
		drink + "/fit": {"wish": {"sweeter"}}, drink + "/swap": {"food": {"core:sugar-white"}}, drink + "/claim": {"check": {"serving(SUGAR) < 9 g"}},
		drink + "/claim?": {"check": {"serving(SUGER)"}}, drink + "/stage": nil, drink + "/guest?language=de": nil, drink + "/allergens": nil,
	} {
		_, page := s.answer(t, path, form)
		cmd := exec.Command(tidy, "-errors", "-quiet", "-utf8", "--warn-proprietary-attributes", "no") // it does not know inputmode and aria-current
		cmd.Stdin = strings.NewReader(page)
		said, err := cmd.CombinedOutput()
		assert.NoError(t, err, path)
		assert.Empty(t, string(said), path)
	}
}

// A sour cherry is sour by its malic acid (data/core/literature.csv: 1,850 mg in 100 g of its juice, and 18 mg of citric acid, which
// comes second), and what is not the same is not compared by a bar.
func TestASearchShowsTheAcidsThatAFoodHasMostOf(t *testing.T) {
	s := serve(t, demos(t))
	code, page := s.fetch(t, "/foods?q=sour+cherry")
	require.Equal(t, http.StatusOK, code)
	_, cherry, _ := strings.Cut(page, `href="/foods/core:sour-cherry"`)
	cherry, _, _ = strings.Cut(cherry, `href="/foods/`)
	malic, citric := strings.Index(cherry, "malic acid"), strings.Index(cherry, "citric acid")
	require.Positive(t, malic, cherry)
	require.Positive(t, citric, cherry)
	assert.Less(t, malic, citric)
	d := s.document(t, []string{"food", "show", "core:sour-cherry"})
	figures := figuresOf(cherry)
	assert.GreaterOrEqual(t, len(figures), 3)
	for _, f := range figures {
		of := at(d, strings.Split(f.path, ".")...)
		assert.True(t, shows(f, of), "%s is %q on the page, and %v in the document", f.path, f.text, of)
	}
}
