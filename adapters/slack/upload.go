package slack

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"time"

	"github.com/slack-go/slack"

	"presshand/bot"
	"presshand/bot/book"
)

// shareWithin is how long a file may take to show up in its thread.
const shareWithin = 3 * time.Second

// sendPicture uploads a picture into the thread and returns the file's id. A
// try that failed half way leaves at most a file that nobody sees.
func (a *Slack) sendPicture(ctx context.Context, o book.Outgoing, s bot.Sheet, thread string) (string, error) {
	name := pictureName(o.Key)
	if a.pace.doubtful(o.Key, o.Tries) {
		rest(ctx, time.Until(o.At.Add(shareWithin)))
		id, err := a.shared(ctx, o, thread, name)
		if err != nil || id != "" {
			return id, err
		}
	}
	slot, err := a.api.GetUploadURLExternalContext(ctx, slack.GetUploadURLExternalParameters{
		FileName: name, FileSize: len(s.Picture.PNG), AltTxt: s.Picture.Alt})
	if err == nil {
		err = a.api.UploadToURL(ctx, slack.UploadToURLParameters{UploadURL: slot.UploadURL, Reader: bytes.NewReader(s.Picture.PNG), Filename: name})
	}
	if err != nil {
		a.pace.putOff(o.Key, o.Tries) // it is surely not in the thread
		return "", err
	}
	_, err = a.api.CompleteUploadExternalContext(ctx, slack.CompleteUploadExternalParameters{
		Files: []slack.FileSummary{{ID: slot.FileID, Title: o.Text}}, Channel: o.Place.Room, ThreadTimestamp: thread})
	if err != nil {
		return "", err
	}
	if err := a.removePicture(ctx, o.ReplacesRef); err != nil {
		a.Log.Warn("slack: picture of the earlier wording not removed", "error", err)
	}
	return slot.FileID, nil
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

// shared looks for a picture that an earlier try may have brought to Slack.
func (a *Slack) shared(ctx context.Context, o book.Outgoing, thread, name string) (id string, err error) {
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
