package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/signal"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// serve shows a folder to this machine alone, until it is stopped.
func serve(folder string, port uint, stdout io.Writer) error {
	l, err := listen(port)
	if err != nil {
		return err
	}
	server := http.Server{Handler: handler(folder), ReadHeaderTimeout: 10 * time.Second}
	stop, forget := signal.NotifyContext(context.Background(), os.Interrupt)
	defer forget()
	context.AfterFunc(stop, func() { server.Close() }) // so that the caller can take the folder away
	fmt.Fprintf(stdout, "http://%s/ (stop with Ctrl-C)\n", l.Addr())
	if err := server.Serve(l); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// listen takes a port on the loopback address: nobody else on the network sees it.
func listen(port uint) (net.Listener, error) {
	return net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.FormatUint(uint64(port), 10)))
}

// handler hands out the files, and gzipped what lies there gzipped.
func handler(folder string) http.Handler {
	plain := http.FileServer(http.Dir(folder))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Cache-Control", "no-cache")
		w.Header().Set("X-Content-Type-Options", "nosniff")
		if r.URL.Path == "/"+program && strings.Contains(r.Header.Get("Accept-Encoding"), "gzip") {
			servePacked(w, r, filepath.Join(folder, program+".gz"))
			return
		}
		plain.ServeHTTP(w, r)
	})
}

func servePacked(w http.ResponseWriter, r *http.Request, name string) {
	f, err := os.Open(name)
	if err != nil {
		http.NotFound(w, r)
		return
	}
	defer f.Close()
	w.Header().Set("Content-Encoding", "gzip")
	w.Header().Set("Content-Type", "application/wasm")
	http.ServeContent(w, r, program, time.Time{}, f)
}
