// Package slackfake is a stand-in for Slack: the Web API, uploads and Socket
// Mode on the loopback, as far as an app that answers messages can tell. People
// say, edit, react and click through methods of [Server]; faults come on
// demand.
//
//	server.go   tokens, scopes, calls, answers
//	socket.go   Socket Mode: hello, pings, acknowledgements, redelivery
//	room.go     channels, messages, threads
//	people.go   what people do
//	chat.go     chat.*, reactions.*, views.*
//	read.go     conversations.*, users.*
//	upload.go   the three steps of an upload
//	limit.go    what Slack takes in one message, and how often
//	fault.go    what goes wrong on demand
//
// Behaviour is that of Slack's public documentation; where real Slack only
// tolerates something, the stand-in refuses it.
package slackfake
