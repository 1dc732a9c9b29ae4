package web

import (
	"context"
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"net"
	"net/http"
	"regexp"
	"sync"
)

// sessionCookie names the cookie that says which browser it is; it goes when the browser is closed. The port is in
// the name: a browser sends the cookies of a machine to each of its ports, and two servers on one would take each
// other's away.
func sessionCookie(r *http.Request) string {
	const name = "sipsum"
	if _, port, err := net.SplitHostPort(r.Host); err == nil {
		return name + "-" + port
	}
	return name
}

// Keys are the one-time tokens by which browsers come in, and the browsers that did.
type Keys struct {
	announce func(token string) // tells whoever started the server of the next token

	mu     sync.Mutex
	token  string
	inside map[string]bool // by the hash of the session
}

// NewKeys makes the first token and announces it, and another after each that was used.
func NewKeys(announce func(token string)) *Keys {
	k := &Keys{announce: announce, inside: map[string]bool{}}
	k.renew()
	return k
}

func (k *Keys) renew() {
	k.token = rand.Text()
	k.announce(k.token)
}

// redeem exchanges a token for a session; a token is good once.
func (k *Keys) redeem(token string) (session string, ok bool) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if subtle.ConstantTimeCompare([]byte(token), []byte(k.token)) == 0 {
		return "", false
	}
	session = rand.Text()
	k.inside[hashed(session)] = true
	k.renew()
	return session, true
}

func (k *Keys) holds(session string) bool {
	k.mu.Lock()
	defer k.mu.Unlock()
	return k.inside[hashed(session)] // a hash is looked up in the same time whatever it is asked
}

func hashed(text string) string {
	sum := sha256.Sum256([]byte(text))
	return string(sum[:])
}

// Entrance is where a token is exchanged.
const Entrance = "/enter"

// known lets in who has come by a token; without keys, everybody, each browser with a session of its own.
func (k *Keys) known(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		session := sessionOf(r)
		switch {
		case k == nil && session == "":
			session = rand.Text()
			setSession(w, r, session)
		case k == nil, session != "" && k.holds(session), costsNothing(r):
		case r.URL.Path == Entrance:
			k.exchange(w, r)
			return
		default:
			show(w, http.StatusUnauthorized, "enter", entrance{Head: head{Title: "Come in by the key"}})
			return
		}
		next.ServeHTTP(w, r.WithContext(context.WithValue(r.Context(), sessionKey{}, session)))
	})
}

// entrance is the page on which somebody comes in.
type entrance struct {
	Head  head
	Token string // empty: there is none, or it was used
}

// exchange gives a session for a token. Only a press of the button does: programs that look at links before people
// do would use the token up.
func (k *Keys) exchange(w http.ResponseWriter, r *http.Request) {
	if r.Method != http.MethodPost {
		show(w, http.StatusOK, "enter", entrance{Head: head{Title: "Come in"}, Token: r.URL.Query().Get("token")})
		return
	}
	session, ok := k.redeem(r.PostFormValue("token"))
	if !ok {
		show(w, http.StatusUnauthorized, "enter", entrance{Head: head{Title: "This key is no longer good"}})
		return
	}
	setSession(w, r, session)
	http.Redirect(w, r, "/", http.StatusSeeOther)
}

func setSession(w http.ResponseWriter, r *http.Request, session string) {
	http.SetCookie(w, &http.Cookie{Name: sessionCookie(r), Value: session, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
}

// ours is how a session is written: rand.Text.
var ours = regexp.MustCompile(`^[A-Z2-7]{26}$`)

// sessionOf gives the session that a browser says it has; empty if that is none of ours.
func sessionOf(r *http.Request) string {
	c, err := r.Cookie(sessionCookie(r))
	if err != nil || !ours.MatchString(c.Value) {
		return ""
	}
	return c.Value
}

// sessionKey is where the session stands in the context of a request.
type sessionKey struct{}
