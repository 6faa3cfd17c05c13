module presshand

go 1.26

require github.com/alecthomas/participle/v2 v2.1.4
