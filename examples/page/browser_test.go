//go:build !js

package main

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/google/go-cmp/cmp"
)

// patience is how long anything in the browser may take on a busy machine.
const patience = 60 * time.Second

// browser is started once for all tests that need one.
var browser = sync.OnceValues(func() (context.Context, error) {
	var name string
	for _, known := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if found, err := exec.LookPath(known); err == nil {
			name = found
			break
		}
	}
	if name == "" {
		return nil, exec.ErrNotFound
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(name), chromedp.Flag("disable-dev-shm-usage", true))
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	allocator, cancel := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, _ := chromedp.NewContext(allocator)
	closeBrowser = cancel
	return ctx, chromedp.Do(ctx)
})

var closeBrowser = func() {}

// tab is the page in a tab of its own.
type tab struct {
	*testing.T
	ctx  context.Context
	base string

	mu    sync.Mutex
	said  []string // on the console
	asked []string // of any server
}

// load opens the page at a size of its window and waits until it has computed the
// sample.
func load(t *testing.T, width, height int64) *tab {
	t.Helper()
	folder, _ := built(t)
	ctx, err := browser()
	if err != nil {
		missing(t, err)
	}
	server := httptest.NewServer(handler(folder))
	t.Cleanup(server.Close)
	ctx, cancel := chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	b := &tab{T: t, ctx: ctx, base: server.URL}
	b.do(chromedp.EmulateViewport(width, height))
	if err := chromedp.Listen(ctx, b.note); err != nil {
		t.Fatal(err)
	}
	send(b, runtime.Enable, cdp.Empty{})
	send(b, log.Enable, cdp.Empty{})
	send(b, network.Enable, network.EnableParams{})
	b.do(chromedp.Navigate(server.URL + "/"))
	b.until(`document.getElementById("verdict").textContent.startsWith("No fault.")`)
	return b
}

// missing skips where there is no browser, unless one is required.
func missing(t *testing.T, err error) {
	t.Helper()
	if os.Getenv("COLLINEAR_BROWSER") == "required" {
		t.Fatalf("no browser could be started: %v", err)
	}
	t.Skipf("no browser could be started, so the page was not tried in one: %v", err)
}

// note keeps what the page says and what it asks for.
func (b *tab) note(event any) {
	b.mu.Lock()
	defer b.mu.Unlock()
	switch event := event.(type) {
	case *runtime.EventExceptionThrown:
		b.said = append(b.said, fmt.Sprintf("exception: %+v", event.ExceptionDetails))
	case *runtime.EventConsoleAPICalled:
		b.said = append(b.said, fmt.Sprintf("console: %+v", event.Args))
	case *log.EventEntryAdded:
		b.said = append(b.said, fmt.Sprintf("log: %+v", event.Entry))
	case *network.EventRequestWillBeSent:
		b.asked = append(b.asked, event.Request.URL)
	}
}

// quiet fails where the page said anything on the console.
func (b *tab) quiet() {
	b.Helper()
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, line := range b.said {
		b.Error(line)
	}
}

// requests are all that the page has asked for so far.
func (b *tab) requests() []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return append([]string(nil), b.asked...)
}

func (b *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.Helper()
	ctx, cancel := b.within()
	defer cancel()
	if err := chromedp.Do(ctx, steps...); err != nil {
		b.Fatal(err)
	}
}

// within bounds what is done. The first use of a tab is what its life hangs on, so
// that one is not bounded.
func (b *tab) within() (context.Context, context.CancelFunc) {
	if chromedp.FromContext(b.ctx).Target == nil {
		return b.ctx, func() {}
	}
	return context.WithTimeout(b.ctx, patience)
}

// send gives the browser one of its own commands.
func send[P, R any](b *tab, c cdp.Command[P, R], params P) {
	b.Helper()
	if _, err := chromedp.Call(b.ctx, c, params); err != nil {
		b.Fatal(err)
	}
}

// eval is the value of an expression of JavaScript, also of one that is promised.
func eval[T any](b *tab, expression string) T {
	b.Helper()
	ctx, cancel := b.within()
	defer cancel()
	value, err := chromedp.Run(ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		b.Fatalf("%s: %v", expression, err)
	}
	return value
}

// until waits for an expression to be true.
func (b *tab) until(expression string) {
	b.Helper()
	ctx, cancel := b.within()
	defer cancel()
	if _, err := chromedp.Run(ctx, chromedp.Poll[bool](expression)); err != nil {
		b.Fatalf("%s: %v; it says %q", expression, err, b.said)
	}
}

// record is that which the page holds.
func (b *tab) record() string {
	b.Helper()
	return eval[string](b, fmt.Sprintf(`import(%q).then((m) => m.state.record)`, b.base+"/page.js"))
}

// shows fails where the page holds another record, or shows another sheet.
func (b *tab) shows(want given) {
	b.Helper()
	sameRecord(b.T, b.record(), want.Record)
	same := fmt.Sprintf(`(() => { const t = document.createElement("template"); t.innerHTML = %s; return t.innerHTML === %s.innerHTML; })()`,
		quoted(want.Sheet), element("sheet"))
	if !eval[bool](b, same) {
		b.Error("the sheet is another one")
	}
}

func quoted(text string) string {
	data, err := json.Marshal(text)
	if err != nil {
		panic(err)
	}
	return string(data)
}

// element is an expression for the element of an id.
func element(id string) string { return "document.getElementById(" + quoted(id) + ")" }

// text is what can be read in an element; nothing where it is hidden.
func (b *tab) text(id string) string {
	b.Helper()
	return eval[string](b, "((e) => e.checkVisibility() ? e.innerText : \"\")("+element(id)+")")
}

// write puts text into a field with the keyboard, in place of what is there.
func (b *tab) write(id, text string) {
	b.Helper()
	eval[bool](b, element(id)+".focus() ?? true")
	b.overwrite(text)
}

// overwrite types into whatever has the focus.
func (b *tab) overwrite(text string) {
	b.Helper()
	b.do(chromedp.KeyEvent("a", chromedp.KeyModifiers(chromedp.ModifierCtrl)), chromedp.KeyEvent(kb.Backspace))
	if text != "" {
		b.do(chromedp.KeyEvent(text))
	}
}

// press clicks a button as a script would, wherever it is.
func (b *tab) press(id string) {
	b.Helper()
	eval[bool](b, element(id)+".click() ?? true")
}

// picture is kept for people to look at, where a folder is named.
func (b *tab) picture(name string) {
	b.Helper()
	folder := os.Getenv("COLLINEAR_PICTURES")
	if folder == "" {
		return
	}
	data, err := chromedp.Run(b.ctx, chromedp.CaptureScreenshot())
	if err != nil {
		b.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(folder, strings.ReplaceAll(name, " ", "-")+".png"), data, 0o644); err != nil {
		b.Fatal(err)
	}
}

// holds tells whether the page's job is a document, whatever the order of its names.
func (b *tab) holds(document string) bool {
	b.Helper()
	var got, want any
	held := eval[string](b, fmt.Sprintf(`import(%q).then((m) => JSON.stringify(m.state.job))`, b.base+"/page.js"))
	if json.Unmarshal([]byte(held), &got) != nil || json.Unmarshal([]byte(document), &want) != nil {
		return false
	}
	return cmp.Equal(got, want)
}

// offline takes the network away.
func (b *tab) offline() {
	b.Helper()
	nothing := network.Conditions{Offline: true, DownloadThroughput: -1, UploadThroughput: -1}
	send(b, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{MatchedNetworkConditions: []*network.Conditions{&nothing}})
	if eval[bool](b, `fetch("page.js").then(() => true, () => false)`) {
		b.Fatal("still on the network")
	}
	b.mu.Lock()
	b.said, b.asked = nil, nil // what was asked here, and that it failed
	b.mu.Unlock()
}
