package extract

import "math"

// folds is in how many parts the judged talk is, each kept from a fitting in turn; ofWays tells
// of what is in none of them, the ways of saying a thing.
const (
	folds  = 8
	ofWays = folds
)

// A learner holds the weights of clues while they are fitted by stochastic gradient descent,
// with a step of its own for each weight, and their mean over the epochs.
type learner struct {
	weight, square, mean []float64
	step, shrink         float64
}

func newLearner(weights int, step, shrink float64) *learner {
	return &learner{make([]float64, weights), make([]float64, weights), make([]float64, weights), step, shrink}
}

// learn moves the weight of a clue against its gradient.
func (l *learner) learn(k clue, g float64) {
	g += l.shrink * l.weight[k]
	l.square[k] += g * g
	l.weight[k] -= l.step * g / (1e-3 + math.Sqrt(l.square[k]))
}

// endEpoch ends one of so many epochs.
func (l *learner) endEpoch(epochs int) {
	for k, w := range l.weight {
		l.mean[k] += w / float64(epochs)
	}
}

// packed gives the means as signed bytes, so many to one.
func (l *learner) packed(scale float64) string {
	b := make([]byte, len(l.mean))
	for i, w := range l.mean {
		b[i] = byte(int8(max(-127, min(127, math.Round(w*scale)))))
	}
	return string(b)
}
