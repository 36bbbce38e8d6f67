package normalize

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

type specCase struct {
	Input   string
	Results []struct {
		Text       string
		Resolution struct{ Value, Unit, Subtype string }
	}
}

// specUnits are the unit names of the cases and ours.
var specUnits = map[string]string{"Inch": "in", "Foot": "ft", "Yard": "yd", "Mile": "mi", "Millimeter": "mm", "Centimeter": "cm",
	"Decimeter": "dm", "Meter": "m", "Kilometer": "km", "Gram": "g", "Kilogram": "kg", "Pound": "lb", "Ounce": "oz", "Ton": "ton",
	"Metric ton": "ton", "Milliliter": "mL", "Liter": "L", "Gallon": "gal", "Cup": "cup", "Tablespoon": "tbsp", "Teaspoon": "tsp",
	"Mile per hour": "mph", "Kilometer per hour": "km/h", "Meter per second": "m/s", "C": "degC", "F": "degF", "Degree": "deg", "Turn": "turn", "Radian": "rad"}

// leftOut lists the cases that do not concern what a workshop says, each with its
// reason. They are named by words of the case.
var leftOut = []struct{ in, why string }{
	{"180.25ml", "our numbers include those with a unit"}, {"180ml", "our numbers include those with a unit"},
	{"trillionth", "no such fraction in a workshop"}, {"^", "powers are not spoken there"}, {"127.32e13", "exponents are not spoken there"},
	{"12.32e+14", "exponents are not spoken there"}, {"-12e-1", "exponents are not spoken there"}, {"1.2b", "a letter for a billion is money"},
	{"10M.", "a letter for a million is money"}, {"1MM", "letters for millions are money"}, {"1,674.5 G", "a letter for a billion is money"},
	{"lakh", "Indian scale words of money"}, {"firsts", "no such fraction in a workshop"}, {"twenty fifths", "no such fraction in a workshop"},
	{"thirty fifths", "no such fraction in a workshop"}, {"thirty-fifths", "no such fraction in a workshop"}, {"hundred fifth", "no such fraction in a workshop"},
	{"thousand fifths", "no such fraction in a workshop"}, {"three and three fifths", "a sum of three parts is no way of saying a number"},
	{"one out of three", "a rate, not a value"}, {"two out of five", "a rate, not a value"}, {"1 in twenty-one", "a rate, not a value"},
	{"1 234 567", "in talk two figures side by side are two numbers"}, {"40 000", "in talk two figures side by side are two numbers"},
	{"1 414 021 100", "in talk two figures side by side are two numbers"}, {"234\u202f567.89", "in talk two figures side by side are two numbers"},
	{"$2", "prices are not taken"}, {"1.111,11", "continental grouping is written, not spoken"},
	{"million and a", "a fraction of a million is no workshop value"}, {"million and two thirds", "a fraction of a million is no workshop value"},
	{"million and five ninths", "a fraction of a million is no workshop value"}, {"of a million", "a fraction of a million is no workshop value"},
	{"quarters million", "a fraction of a million is no workshop value"}, {"billion and", "a fraction of a billion is no workshop value"},
	{"barrels", "a unit of the oil trade"}, {"acre", "area"}, {"cubic feet", "a unit of the gas trade"}, {"square meters", "area"},
	{"km2", "area"}, {"24703m2", "area"}, {"16-bit", "information"}, {"100 MB", "information"}, {"picometer", "no workshop length"},
	{"millisecond", "speeds that no workshop says"},
}

func skipCase(c specCase) string {
	for _, l := range leftOut {
		if strings.Contains(c.Input, l.in) {
			return l.why
		}
	}
	return ""
}

// TestRecognizersSpecs reads the English number, dimension and temperature cases
// of Recognizers-Text (specs at commit 90e968ea44dc, MIT). At least 97 percent of
// those that concern a workshop must give the same values and units.
func TestRecognizersSpecs(t *testing.T) {
	run := func(file string, got func(string) []string, want func(specCase) []string) {
		var cases []specCase
		readJSON(t, "outside/recognizers-text/"+file, &cases)
		n, right, out := 0, 0, 0
		for _, c := range cases {
			if why := skipCase(c); why != "" {
				out++
				continue
			}
			n++
			g, w := strings.Join(got(c.Input), " "), strings.Join(want(c), " ")
			if g == w {
				right++
			} else {
				t.Logf("%s: %q: got [%s], want [%s]", file, c.Input, g, w)
			}
		}
		t.Logf("%s: %d of %d right, %d left out", file, right, n, out)
		if n == 0 || float64(right) < 0.97*float64(n) {
			t.Errorf("%s: %d of %d right, want 97 percent", file, right, n)
		}
	}
	value := func(s string) string {
		f, err := strconv.ParseFloat(s, 64)
		if err != nil {
			return s
		}
		return strconv.FormatFloat(f, 'g', 9, 64)
	}
	run("NumberModel.json", func(s string) []string {
		var out []string
		for _, n := range Numbers(s) {
			f, _ := n.Low.Float64()
			out = append(out, strconv.FormatFloat(f, 'g', 9, 64))
			if n.High.Cmp(n.Low) != 0 || n.Alt {
				f, _ := n.High.Float64()
				out = append(out, strconv.FormatFloat(f, 'g', 9, 64))
			}
		}
		return out
	}, func(c specCase) []string {
		var out []string
		for _, r := range c.Results {
			out = append(out, value(r.Resolution.Value))
		}
		return out
	})
	for _, file := range []string{"DimensionModel.json", "TemperatureModel.json"} {
		run(file, func(s string) []string {
			var out []string
			for _, q := range Quantities(s) {
				if (q.Kind == Temperature) != (file == "TemperatureModel.json") || q.Low == nil {
					continue
				}
				f, _ := q.High.Float64()
				unit := q.Unit
				if unit == "t" {
					unit = "ton" // the cases do not tell the two
				}
				out = append(out, strconv.FormatFloat(math.Round(f*1e9)/1e9, 'g', 9, 64)+" "+unit)
			}
			return out
		}, func(c specCase) []string {
			var out []string
			for _, r := range c.Results {
				if r.Resolution.Value == "" {
					continue // a unit with no number
				}
				out = append(out, value(r.Resolution.Value)+" "+specUnits[r.Resolution.Unit])
			}
			return out
		})
	}
}
