// Package bot holds the conversation: a message becomes a phrase, the phrase
// and what its thread remembers become questions, the engine answers them, and
// the answers become a reply in the words of the shop.
//
//	port.go      what an adapter gives and takes: Message, Reply, Room, Clock
//	bot.go       Bot.Handle: one message in, one reply out
//	thread.go    what a thread remembers, and how a follow-up amends it
//	question.go  phrase and thread to questions for the engine
//	compare.go   the same question for several values of one field
//	answer.go    answers to the lines of a reply
//	says.go      a sentence for every reason and caution of the engine
//	format.go    quantities as a tape or a gauge shows them
//	why.go       the working behind the figures
//	words.go     trade words, units and help
//	trouble.go   errors to prose; the only place
//	json.go      the reply for machines
package bot
