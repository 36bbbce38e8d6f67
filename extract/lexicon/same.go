package lexicon

// alike gives the word that stands for others which say the same.
func alike(w string) string {
	switch w {
	case "cannot":
		return "can't"
	case "we":
		return "i" // who works alone and who works with the viewer tell the same work
	case "us":
		return "me"
	case "our":
		return "my"
	case "ours":
		return "mine"
	case "ourselves":
		return "myself"
	}
	return w
}

// Joined gives the word that two words are when they are said in one, "don't" for "do not", and
// tells whether there is one. People say either and mean the same.
func Joined(a, b string) (string, bool) {
	switch {
	case b == "not":
		switch a {
		case "do", "does", "did", "has", "have", "had", "would", "could", "should", "must", "need":
			return a + "n't", true
		case "will":
			return "won't", true
		case "can":
			return "can't", true
		}
	case a == "going" && b == "to":
		return "gonna", true
	}
	return "", false
}

// Leaning gives the form in which a word leans on the one before it, "'m" for "am" after "i", or
// the word itself where it does not.
func Leaning(before, word string) string {
	switch word {
	case "am":
		if before == "i" {
			return "'m"
		}
	case "are":
		switch before {
		case "i":
			return "'m"
		case "you", "they":
			return "'re"
		}
	case "'re":
		if before == "i" {
			return "'m"
		}
	case "were":
		if before == "i" {
			return "was"
		}
	case "weren't":
		if before == "i" {
			return "wasn't"
		}
	case "have":
		switch before {
		case "i", "you", "they":
			return "'ve"
		}
	case "will":
		switch before {
		case "i", "you", "they", "it", "that", "he", "she", "there", "this":
			return "'ll"
		}
	case "is":
		switch before {
		case "it", "that", "there", "here", "he", "she", "what", "where", "who", "how":
			return "'s"
		}
	}
	return word
}

// Unleaning gives the word that "have" is before another: "'ve" where something was done, "have"
// where there is something or something is to be done ("I've to", "I've a").
func Unleaning(leaning, next string) string {
	if leaning == "'ve" {
		switch next {
		case "to", "a", "an", "the", "no", "one", "some", "any", "this", "that", "these", "those", "it", "my", "your", "two", "three", "four":
			return "have"
		}
	}
	return leaning
}
