// Package bot holds the conversation: a message becomes a phrase, the phrase
// and what its thread remembers become questions, the engine answers them, and
// the answers become a reply in the words of the shop.
//
//	port.go       what an adapter gives and takes: Message, Reply, Room, Clock
//	bot.go        Bot.Handle: one message in, one reply out
//	clerk.go      the events of an inbox answered with a bot
//	thread.go     what a thread remembers, and how a follow-up amends it
//	bare.go       a bare number, taken for what the thread asked or said
//	question.go   phrase and thread to questions for the engine
//	compare.go    the same question for several values of one field
//	compose.go    answers to the lines of a reply
//	figures.go    the headline and the figures; plan_lines.go those of a plan
//	notices.go    what was not used, and the cautions
//	says.go       a sentence for every reason and caution of the engine
//	format.go     quantities as a tape or a gauge shows them
//	command.go    words to the load book
//	danger.go     questions about dangers
//	draw.go       which picture goes with an answer
//	why.go        the working behind the figures
//	words.go      trade words, units and help
//	trouble.go    errors to prose; the only place
//	json.go       the reply for machines
package bot
