package main

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"mime"
	"net/http"
	"os"
	"path/filepath"
	"strings"
)

// largest is more than any release has, in bytes.
const largest = 8 << 30

// fetcher fetches files.
type fetcher struct {
	client   *http.Client
	out      io.Writer
	progress *progress
}

// get fetches one file into a folder. What is there already is kept; what does
// not come whole leaves nothing behind.
func (f *fetcher) get(ctx context.Context, what file, folder string) error {
	target := filepath.Join(folder, what.name)
	if _, err := os.Stat(target); err == nil {
		fmt.Fprintf(f.out, "%s is there already\n", target)
		return nil
	}
	answer, err := f.ask(ctx, what.url)
	if err != nil {
		return err
	}
	defer answer.Body.Close()
	part, err := os.CreateTemp(folder, ".part-*")
	if err != nil {
		return err
	}
	defer os.Remove(part.Name()) // gone after the renaming
	sum, n, err := f.copy(part, answer, what.name)
	if closed := part.Close(); err == nil {
		err = closed
	}
	if err != nil {
		return err
	}
	if what.sha256 != "" && !strings.EqualFold(sum, what.sha256) {
		return fmt.Errorf("has the SHA-256 %s where %s was expected; it is not kept", sum, what.sha256)
	}
	if err := os.Rename(part.Name(), target); err != nil {
		return err
	}
	fmt.Fprintf(f.out, "%s: %d bytes, SHA-256 %s\n", target, n, sum)
	return nil
}

// ask asks for an address and refuses what is no file.
func (f *fetcher) ask(ctx context.Context, address string) (*http.Response, error) {
	request, err := http.NewRequestWithContext(ctx, http.MethodGet, address, nil)
	if err != nil {
		return nil, err
	}
	answer, err := f.client.Do(request)
	if err != nil {
		return nil, err
	}
	kind, _, _ := mime.ParseMediaType(answer.Header.Get("Content-Type"))
	switch {
	case answer.StatusCode != http.StatusOK:
		err = fmt.Errorf("the publisher answers %s", answer.Status)
	case kind == "text/html":
		err = errors.New("the publisher sends a page in place of the file: it may have moved, or its terms are to be read first")
	case answer.ContentLength > largest:
		err = fmt.Errorf("is announced with %d bytes, more than any table has", answer.ContentLength)
	}
	if err != nil {
		answer.Body.Close()
		return nil, err
	}
	return answer, nil
}

// copy copies the answer and gives its sum and length.
func (f *fetcher) copy(into io.Writer, answer *http.Response, name string) (sum string, n int64, err error) {
	f.progress.begin(name, answer.ContentLength)
	defer f.progress.end()
	hash := sha256.New()
	n, err = io.Copy(io.MultiWriter(into, hash, f.progress), io.LimitReader(answer.Body, largest+1))
	switch {
	case err != nil:
		return "", n, err
	case n > largest:
		return "", n, fmt.Errorf("is longer than %d bytes, more than any table has", int64(largest))
	case n == 0:
		return "", n, errors.New("is empty")
	case answer.ContentLength >= 0 && n != answer.ContentLength:
		return "", n, fmt.Errorf("came with %d of %d bytes", n, answer.ContentLength)
	}
	return hex.EncodeToString(hash.Sum(nil)), n, nil
}
