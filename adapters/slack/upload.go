package slack

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"strings"
	"time"

	"github.com/slack-go/slack"

	"presshand/bot"
	"presshand/bot/book"
	"presshand/bot/desk"
)

// shareWithin is how long a file may take to show up in its thread.
const shareWithin = 3 * time.Second

// maxAlt is the longest text that Slack takes in the place of a picture, in
// characters.
const maxAlt = 1000

// noPicture are the errors after which Slack will not take a picture, whatever
// it does with words.
var noPicture = map[string]bool{
	"missing_scope": true, "not_allowed_token_type": true, "access_denied": true, "ekm_access_denied": true,
	"file_uploads_disabled": true, "file_uploads_except_images_disabled": true, "file_upload_size_restricted": true,
	"file_type_not_allowed": true, "blocked_file_type": true, "alt_txt_too_large": true, "missing_argument": true,
	"posting_to_channel_denied": true, "unknown_method": true, "method_deprecated": true, "deprecated_endpoint": true,
}

// sendPicture brings a picture into the thread, in the place of an earlier one,
// and returns the file's id.
func (a *Slack) sendPicture(ctx context.Context, o book.Outgoing, s bot.Sheet, thread string) (string, error) {
	file, err := a.pictureSentBefore(ctx, o, thread)
	if err == nil && file == "" {
		file, err = a.upload(ctx, o, *s.Picture, thread)
	}
	if err != nil {
		return "", err
	}
	if err := a.removePicture(ctx, o.ReplacesRef); err != nil {
		a.Log.Warn("slack: picture of the earlier wording not removed", "error", err)
	}
	return file, nil
}

// pictureSentBefore looks for a picture that an earlier try may have brought to
// Slack, once it must have shown up. When that try was is not known after a
// restart; it is then waited for as if it were now.
func (a *Slack) pictureSentBefore(ctx context.Context, o book.Outgoing, thread string) (string, error) {
	if !a.pace.doubtful(o.Key, o.Tries) {
		return "", nil
	}
	if wait := a.pace.unsure(o.Key, shareWithin); wait > 0 {
		return "", &desk.WaitError{After: wait, Err: errors.New("picture of an earlier try may still show up")}
	}
	return a.shared(ctx, o, thread)
}

// upload sends a picture. A try that failed half way leaves at most a file that
// nobody sees.
func (a *Slack) upload(ctx context.Context, o book.Outgoing, p bot.Picture, thread string) (string, error) {
	name := pictureName(o.Key)
	slot, err := a.api.GetUploadURLExternalContext(ctx, slack.GetUploadURLExternalParameters{
		FileName: name, FileSize: len(p.PNG), AltTxt: altText(p.Alt)})
	if err == nil {
		err = a.api.UploadToURL(ctx, slack.UploadToURLParameters{UploadURL: slot.UploadURL, Reader: bytes.NewReader(p.PNG), Filename: name})
	}
	if err != nil {
		a.pace.putOff(o.Key, o.Tries) // it is surely not in the thread
		return "", err
	}
	defer a.pace.tryNow(o.Key)
	_, err = a.api.CompleteUploadExternalContext(ctx, slack.CompleteUploadExternalParameters{
		Files: []slack.FileSummary{{ID: slot.FileID, Title: o.Text}}, Channel: o.Place.Room, ThreadTimestamp: thread})
	return slot.FileID, err
}

// altText cuts what a picture shows, told in words, to what Slack takes: after a
// sentence where one ends in the latter half, else after a word.
func altText(alt string) string {
	rs := []rune(alt)
	if len(rs) <= maxAlt {
		return alt
	}
	cut := string(rs[:maxAlt-2])
	if i := strings.LastIndex(cut, ". "); i >= len(cut)/2 {
		return cut[:i+1] + " …"
	}
	if i := strings.LastIndexByte(cut, ' '); i > 0 {
		cut = strings.TrimRight(cut[:i], " ,;:")
	}
	return cut + " …"
}

// removePicture takes a picture out of its thread, where there is one.
func (a *Slack) removePicture(ctx context.Context, file string) error {
	if file == "" {
		return nil
	}
	err := a.api.DeleteFileContext(ctx, file)
	if code := codeOf(err); code == "file_not_found" || code == "file_deleted" {
		return nil
	}
	return err
}

// pictureName is by what a picture is found again.
func pictureName(key string) string {
	sum := sha256.Sum256([]byte(key))
	return "press-" + hex.EncodeToString(sum[:8]) + ".png"
}

// shared returns the picture of a reply that the thread shows, or "".
func (a *Slack) shared(ctx context.Context, o book.Outgoing, thread string) (id string, err error) {
	name := pictureName(o.Key)
	err = a.eachOwn(ctx, o, thread, func(m slack.Message) bool {
		for _, f := range m.Files {
			if f.Name == name {
				id = f.ID
			}
		}
		return id == ""
	})
	return id, err
}
