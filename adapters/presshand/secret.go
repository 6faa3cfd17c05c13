package main

import (
	"fmt"
	"os"
	"strings"
)

// The environment variables that hold what must not stand in a command line or
// in the configuration, unless that names a file for it.
const (
	slackBotToken     = "PRESSHAND_SLACK_BOT_TOKEN"
	slackAppToken     = "PRESSHAND_SLACK_APP_TOKEN"
	matrixPassword    = "PRESSHAND_MATRIX_PASSWORD"
	matrixToken       = "PRESSHAND_MATRIX_TOKEN"
	matrixRecoveryKey = "PRESSHAND_MATRIX_RECOVERY_KEY"
	matrixStoreKey    = "PRESSHAND_MATRIX_STORE_KEY"
	storeAddress      = "PRESSHAND_STORE"
)

// secret returns what stands in a file, or in the environment where no file is
// named. A variable in the file's name, such as $CREDENTIALS_DIRECTORY, is
// replaced by its value.
func secret(variable, file string) (string, error) {
	if file == "" {
		return strings.TrimSpace(os.Getenv(variable)), nil
	}
	file = os.ExpandEnv(file)
	text, err := os.ReadFile(file)
	if err != nil {
		return "", hint(err, "make the file, or leave the key out and set "+variable)
	}
	word := strings.TrimSpace(string(text))
	if word == "" {
		return "", hint(fmt.Errorf("%s is empty", file), "put the secret into it")
	}
	if n := len(strings.Split(word, "\n")); n > 1 {
		return "", hint(fmt.Errorf("%s has %d lines", file, n), "leave the secret alone in it")
	}
	return word, nil
}

// needed is secret for what cannot be done without.
func needed(what, variable, file string) (string, error) {
	word, err := secret(variable, file)
	if err != nil {
		return "", fmt.Errorf("%s: %w", what, err)
	}
	if word == "" {
		return "", hint(fmt.Errorf("%s is missing", what), "set "+variable+" or name a file for it in the configuration")
	}
	return word, nil
}
