// Package slack serves rooms on Slack, over Socket Mode: no address of ours
// need be reachable from outside.
//
// What comes in is kept in the inbox, then acknowledged, then worked on; what
// could not be kept is not acknowledged, so that Slack sends it again. What
// goes out carries its idempotency key in the message's metadata, where a
// doubtful resend looks for it first.
//
//	slack.go     the settings, and the connection's life
//	socket.go    from the socket to the inbox, and the acknowledgement
//	message.go   what a message says, and whether it is said to the bot
//	markup.go    Slack's markup to plain text
//	gesture.go   buttons, reactions and the slash command
//	card.go      messages that show a load, and their buttons
//	form.go      the form of the second check
//	history.go   what was said during an outage
//	missed.go    what could not be kept though a socket was open
//	send.go      from the outbox to a channel, at its pace
//	upload.go    pictures
//	dress.go     a reply as blocks
//	home.go      the app's home
//	check.go     tokens and scopes
package slack
