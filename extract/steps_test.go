package extract

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

// TestStepsAreInstructions: ways of telling work with and without a verb, in
// trades of our own, and the instruction each is. Common practice, no source.
func TestStepsAreInstructions(t *testing.T) {
	for _, c := range []struct {
		name string
		talk []string
		want []string // steps that must be among those told
		not  []string // words that none may hold
	}{
		{"how it is left", []string{"Undo the hinge pin.", "Bottom clamp loose.", "Tray out."}, []string{"Loosen the bottom clamp."}, nil},
		{"met loose", []string{"Undo the hinge pin.", "The clamp is very loose."}, nil, []string{"Loosen"}},
		{"away", []string{"Undo the strut bolt.", "Strut away."}, []string{"Remove the strut."}, nil},
		{"new ones go where nothing came off", []string{"Undo the hub nut.", "New split pin through."}, []string{"Fit the split pin."}, nil},
		{"only the picture shows it", []string{"Right then.", "Tuck it in there."}, nil, []string{"this part"}},
		{"that one is the thing", []string{"There's a spring on the lever.", "Unhook that one."}, []string{"Unhook the spring."}, nil},
		{"one of several", []string{"Two springs hold the lid.", "Unhook that one."}, nil, []string{"springs one"}},
		{"verbs of many trades", []string{"Undo the lever pin.", "Nudge the lever over.", "Descale the element.", "Burnish the pads.", "Knock her into reverse."}, []string{"Nudge the lever over.", "Descale the element.", "Burnish the pads.", "Knock the machine into reverse."}, nil},
		{"where and not what", []string{"Undo the hub nut.", "It should lift up out of the well."}, nil, []string{"Lift"}},
		{"a hand put in", []string{"Undo the hub nut.", "Get your other hand in there."}, nil, []string{"hand"}},
		{"tools that are put somewhere", []string{"Undo the hub nut.", "Tray under it.", "Block of wood between the blade and the deck.", "Wet rag over the tank."}, []string{"Put the tray underneath.", "Put the block of wood between the blade and the deck.", "Put the rag over the tank."}, []string{"Wet rag"}},
		{"cleaned with", []string{"Undo the hub nut.", "Brake cleaner both sides of the disc.", "Wire brush on the hub."}, []string{"Clean both sides of the disc with brake cleaner.", "Brush the hub with the wire brush."}, nil},
		{"loose verbs", []string{"Get the circlip out with the pick.", "Zip the two nuts off.", "Chuck a rag behind the sill."}, []string{"Take the circlip out with the pick.", "Take the two nuts off."}, []string{"Get", "Zip"}},
		{"what holds and what will crack", []string{"Undo the guard bolt.", "There's two screws that hold the disc on.", "There's four of them holding the housing down.", "Two long bolts hold it to the bracket.", "You will crack it."}, nil, []string{"Hold", "Crack"}},
		{"squeezed and pulled", []string{"Undo the strap bolt.", "Fan plug, there's a tab on it, squeeze that and pull.", "Twist the sensor and pull."}, []string{"Remove the fan plug.", "Remove the sensor."}, nil},
		{"a tool that is screwed in", []string{"Undo the crank bolt.", "And now the puller, so you thread this in all the way by hand."}, []string{"Thread the puller in all the way by hand."}, nil},
		{"what a thing gets", []string{"Undo the strap bolt.", "The pivot gets some grease.", "Half a turn on the adjuster."}, []string{"Put some grease on the pivot.", "Turn the adjuster half a turn."}, nil},
		{"a thing and then its place", []string{"Undo the caliper bolts.", "Lift the caliper off.", "Clean the disc.", "Caliper. Over the disc."}, []string{"Fit the caliper over the disc."}, nil},
		{"called as it was called", []string{"Right then.", "These two on the side, these are what hold you on. I'm only slackening them.", "Undo the hub nut."}, []string{"Slacken the two on the side."}, nil},
		{"in with it", []string{"Undo the strap bolt.", "New shaft, and in with it."}, []string{"Fit the shaft."}, nil},
		{"put before who does it", []string{"Undo the strap bolt.", "The water I have closed under the sink.", "The spring ring I press on with two thumbs."}, []string{"Close the water under the sink."}, nil},
		{"with sizes and in turn", []string{"Guard's off, four bolts.", "Housing off, pulley off, new bearing in, housing on nineteens, pulley on."}, []string{"Fit the housing.", "Fit the pulley."}, nil},
		{"what holds it", []string{"Take the cover off.", "Kick strip at the bottom, that's just clips."}, []string{"Remove the kick strip."}, nil},
		{"a spanner on a nut", []string{"Take the cover off.", "Eighteen spanner on the axle nut."}, []string{"Undo the axle nut (eighteen spanner)."}, nil},
		{"how much of what", []string{"Undo the hub nut.", "Smear of grease on the shaft.", "A drop of thread locker on the bolt."}, []string{"Put a smear of grease on the shaft."}, []string{"Apply the"}},
		{"where and with what", []string{"Undo the hub nut.", "The pin comes out with the pliers.", "The new pin goes through the arm."}, []string{"Remove the pin with the pliers."}, nil},
		{"where the next thing begins", []string{"Undo the pivot nut.", "Clean the pivot, waterproof grease on it.", "Push the hose on past the bead, and the clip sits behind the bead."}, []string{"Clean the pivot.", "Push the hose on past the bead."}, nil},
		{"scraped and no scrap", []string{"Undo the bar nut.", "I scraped the groove with a wire."}, []string{"Scrape the groove with a wire."}, nil},
		{"told as done to it", []string{"The sewing machine's unplugged.", "The wheels are chocked.", "Undo the cover bolt.", "These bearings are getting pressed out."}, []string{"Unplug the machine.", "Chock the wheels.", "Press the bearings out."}, nil},
		{"the machine", []string{"Undo the cover bolt.", "Lower the loader to the ground and shut it down.", "Start it up."}, []string{"Shut the machine down.", "Start the machine up."}, nil},
		{"oil that goes on, and then it goes in", []string{"Undo the cover bolt.", "One drop of oil goes on the hook race.", "The new impeller gets a smear of grease and goes in with a twist."}, []string{"Put one drop of oil on the hook race.", "Fit the impeller with a twist."}, []string{"Fit the oil"}},
		{"which bolts", []string{"Undo the bolts that go through the rail."}, []string{"Undo the rail bolts."}, []string{"Fit"}},
		{"then the next", []string{"Undo the cover bolt.", "New diaphragm on, then the spring, then the cover."}, []string{"Fit the spring.", "Fit the cover."}, nil},
		{"on what, and what else", []string{"Take the hub off.", "Clean the stub.", "Hub back on the stub, outer bearing, washer."}, []string{"Fit the hub on the stub.", "Fit the outer bearing."}, nil},
		{"how a pronoun ends", []string{"Undo the arm bolt.", "Pull the arm towards you.", "Take the whole thing off like that."}, []string{"Pull the arm towards you.", "Take the whole thing off."}, nil},
		{"only the picture shows what", []string{"Undo the arm bolt.", "The cat is asleep.", "Nobody wakes the cat.", "Fish them out of the well."}, []string{"Fish these out of the well (not named)."}, []string{"what is shown"}},
		{"said to whoever listens", []string{"Undo the arm bolt.", "Put the grips on the collar, bear with me."}, []string{"Put the grips on the collar."}, []string{"bear"}},
		{"a hand is yours", []string{"Undo the arm bolt.", "Push the seal in with your thumbs."}, []string{"Push the seal in with your thumbs."}, nil},
		{"the whole machine", []string{"Isolate it at the wall.", "Tip it back against the worktop.", "Take the kick strip off, two screws.", "Kick strip back on, two screws.", "Switch it on."}, []string{"Isolate the machine at the wall.", "Tip the machine back against the worktop.", "Switch the machine on."}, nil},
		{"one and then another", []string{"I've pulled the back wheel and dropped the chain off."}, nil, []string{"dropped"}},
		{"how big, how much", []string{"Undo the arm bolt.", "Roll the belt over the big pulley.", "A little grease on the spindle."}, []string{"Roll the belt over the big pulley.", "Put a little grease on the spindle."}, nil},
		{"new one", []string{"Undo the arm nut.", "The old seal pulls out.", "Clean the bore.", "New one in from the back."}, []string{"Fit the seal from the back."}, nil},
		{"as it was done to it", []string{"Undo the arm nut.", "Cable unhooked, arms wide open."}, []string{"Unhook the cable."}, []string{"wide"}},
		{"what follows a comma and and", []string{"Undo the arm nut.", "Take the filter out, and up inside there, there's two more."}, []string{"Take the filter out."}, nil},
		{"he is the pin", []string{"Undo the arm nut.", "There's a split pin through it, straighten his legs and draw him out with the pliers."}, []string{"Draw the split pin out with the pliers."}, nil},
		{"in no list", []string{"Undo the two screws.", "And then the whole dash front comes off.", "Clean the clips.", "The dash front goes back on."}, []string{"Remove the whole dash front.", "Fit the dash front."}, nil},
		{"all of it", []string{"Undo the cup nut.", "The cup is full of old grease, get all that out."}, []string{"Take all of this out (not named)."}, []string{"all the cup"}},
		{"how its end is known", []string{"Undo the arm nut.", "Turn the cone down until it just touches."}, []string{"Turn the cone down until it just touches."}, nil},
		{"named and then done", []string{"Stem bolts first, six mil hex, and just loosen those."}, []string{"Loosen the stem bolts (six mil hex)."}, []string{"Undo"}},
		{"on what", []string{"Undo the arm nut.", "Clean the shaft and put one drop of oil on it."}, []string{"Put one drop of oil on the shaft."}, nil},
		{"a warning at the end", []string{"Undo the cap.", "Blow the hole out with the air line, wear a mask."}, []string{"Blow the hole out with the air line."}, nil},
		{"gently", []string{"Undo the cap.", "Give the commutator a light rub with fine emery."}, []string{"Give the commutator a light rub with fine emery."}, nil},
		{"fill it and switch on", []string{"Undo the cap.", "Fill the tank, switch on, and leave it."}, []string{"Fill the tank."}, nil},
		{"the machine's plug", []string{"The belt's slipping on the treadmill.", "Unplug it.", "Hood off."}, []string{"Unplug the machine."}, nil},
		{"which way up", []string{"Undo the arm nut.", "Fit the seal with the writing facing up."}, []string{"Fit the seal with the writing facing up."}, nil},
		{"got done", []string{"Undo the arm nut.", "I've got it jacked up on an axle stand already.", "Get the cover bolted back on."}, []string{"Jack the machine up on an axle stand.", "Bolt the cover back on."}, nil},
		{"no square of steel", []string{"Undo the arm nut.", "Get the new seal pressed in square."}, []string{"Press the new seal in square."}, nil},
		{"driven home", []string{"Take the guard off.", "Then it's just a case of sliding the new bearing on and tapping it home."}, []string{"Tap the bearing home."}, nil},
		{"don't forget", []string{"Take the belt off.", "Don't forget to put the spacer back in."}, []string{"Put the spacer back in."}, nil},
		{"the whole of it", []string{"Take the guard off.", "Lift the whole assembly out and put it on the bench."}, []string{"Put the whole assembly on the bench."}, nil},
		{"no hose down a hose", []string{"The hose has a spring clip.", "Squeeze that with your pliers, slide it back down the hose."}, nil, []string{"hose back down the hose"}},
		{"which bolt first", []string{"Take the shock out.", "Clean the eyes.", "Put the shock back in lower bolt first."}, []string{"Put the shock back in, lower shock bolt first."}, nil},
		{"those go back", []string{"The lid has four spring clips, flip those back and the lid comes away."}, []string{"Flip the spring clips back."}, nil},
		{"pulled screws", []string{"Pull the two screws on the cover.", "Pop the cover off."}, []string{"Pull the two screws on the cover."}, nil},
		{"it comes with it", []string{"Take the old fan off.", "The new fan comes with a new gasket, so put that on the spigot first."}, []string{"Put the gasket on the spigot first."}, nil},
		{"forward, and then up", []string{"Undo the screw.", "Slide the fan forward and down.", "Clean the spigot.", "Slide the fan up into the spigot."}, []string{"Slide the fan up into the spigot."}, nil},
		{"no clamp is bled", []string{"Undo the union.", "Clamp off. Bleed it through."}, nil, []string{"Bleed the clamp"}},
		{"two stages", []string{"Head bolts in.", "Tighten the head bolts to ten newton metres.", "Then the head bolts go to twenty two newton metres."}, []string{"Tighten the head bolts to 22 N·m."}, nil},
		{"a cover and its screws", []string{"Take the cover off.", "Clean the face.", "Cover on, screws in, nine newton metres."}, []string{"Fit the cover."}, nil},
		{"as the sticker says", []string{"Take the belt off.", "Route the new belt just like the sticker says around the left spindle."}, []string{"Route the new belt around the left spindle."}, nil},
		{"swung is the large part", []string{"Take the rudder off.", "Clean the pins.", "Rudder back on, clip in, swing it side to side."}, []string{"Swing the rudder side to side."}, nil},
		{"off, and then unplugged", []string{"Hopper off.", "Unplug it."}, []string{"Remove the hopper.", "Unplug the machine."}, nil},
		{"an article that fits", []string{"Undo the air box screws.", "Take the jet out, with the spring and a tiny o ring."}, []string{"Take the jet out, with the spring and an o ring."}, nil},
		{"snug, and then how tight", []string{"Take the wheel off.", "Snug the nut back down, twenty five foot pounds."}, []string{"Tighten the wheel nut to 25 lbf·ft."}, []string{"by hand"}},
		{"on each", []string{"Undo the hub nut.", "Bit of silicone grease on each of them."}, []string{"Put a bit of silicone grease on each."}, nil},
		{"what comes of it", []string{"Undo the drain plug.", "You tighten the cover first, you'll crack the spigot.", "You press on the outer ring and you've just put the load through the rollers."}, nil, []string{"Tighten", "Press", "load"}},
		{"and what is seen by it", []string{"Undo the drain plug.", "You lift the lid off, you'll see the spring clip."}, []string{"Lift the lid off."}, nil},
		{"tempting, and forbidden", []string{"Undo the drain plug.", "You're gonna want to lever the seal over. Don't."}, nil, []string{"Lever"}},
		{"some machines only", []string{"Undo the drain plug.", "Some of these presses have a second screw on top of the first one, so you take that out first."}, nil, []string{"second"}},
		{"some, and this one", []string{"Undo the drain plug.", "Some have come loose so I tighten the feet."}, []string{"Tighten the feet."}, nil},
		{"a machine of old", []string{"Undo the drain plug.", "I had a mixer once where the key sheared and I drilled the shaft out."}, nil, []string{"Drill"}},
		{"once is not long ago", []string{"Undo the drain plug.", "I had a look at it once the guard was off and I pulled the washer."}, []string{"Pull the washer."}, nil},
		{"what grease does", []string{"Undo the drain plug.", "Grease in a lock just makes a paste."}, nil, []string{"grease"}},
		{"the name of a tool", []string{"Undo the drain plug.", "Pipe nut, flare wrench, good and snug."}, nil, []string{"Flare", "wrench", "by hand"}},
		{"one spring before another", []string{"Undo the drain plug.", "Before you pull one spring off, take a picture."}, []string{"Take a picture."}, []string{"spring"}},
		{"slides is no part of the name", []string{"Undo the drain plug.", "And the drum slides off in one piece."}, []string{"Remove the drum in one piece."}, nil},
		{"the brake that holds the truck", []string{"Undo the drain plug.", "It's in park, brake's on."}, nil, []string{"brake"}},
		{"never run dry", []string{"Undo the drain plug.", "Wipe of oil on the lip so it don't run dry the first mile."}, nil, []string{"Dry"}},
		{"how tight, not what turns it", []string{"Wheel nuts to ninety newton metres.", "Bracket bolts, thirty."}, []string{"Tighten the bracket bolts to 30 N·m."}, []string{"Undo the bracket"}},
		{"due for it, not done", []string{"Undo the drain plug.", "That clip needs replacing, I'll put a new one in."}, nil, []string{"new one"}},
		{"a stop for tea", []string{"Undo the drain plug.", "Cup of tea.", "Right. That came out in the end with heat."}, nil, []string{"cup"}},
		{"wanted once it has run", []string{"Undo the drain plug.", "The right lock nut I want to check after it's run."}, nil, []string{"Check"}},
		{"an accident", []string{"Undo the drain plug.", "I've knocked the door contact."}, nil, []string{"contact"}},
		{"had it on that side", []string{"Cover off.", "The roller bearing's gone on that side.", "The cover's gone on."}, []string{"Fit the cover."}, []string{"bearing"}},
		{"shortly", []string{"Spacer out.", "I'll get that in a minute."}, nil, []string{"minute"}},
		{"written elsewhere", []string{"Undo the hub nut.", "That's the number I wrote down for you."}, nil, []string{"Write"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			checkSteps(t, c.talk, c.want, c.not)
		})
	}
}

// TestToldAndNotDone: work that is planned, put off, told of others or of another
// machine, and words of work that name things. Common practice, no source.
func TestToldAndNotDone(t *testing.T) {
	for _, c := range []struct {
		talk []string
		want []string // steps that must be among those told
		not  []string // words that none may hold
	}{
		{[]string{"So we're gonna take the pump out, put a new seal in it and put it back.", "Take the cover off."}, []string{"Take the cover off."}, []string{"pump", "seal"}},
		{[]string{"Undo the hub nut.", "The hose has a crack, I'm ordering a longer one and I'll change it."}, nil, []string{"Change"}},
		{[]string{"Undo the hub nut.", "So the old springs go back in for now, and I'll swap them when the others arrive."}, nil, []string{"Swap"}},
		{[]string{"Undo the hub nut.", "When the parcel comes, I change all three springs."}, nil, []string{"Change"}},
		{[]string{"Undo the hub nut.", "Turn the adjuster in and stop when it clicks."}, []string{"Turn the adjuster in and stop."}, nil},
		{[]string{"Undo the hub nut.", "You'll see lads online who cut the cable off and solder the old plugs onto it."}, nil, []string{"Cut", "Solder"}},
		{[]string{"Undo the hub nut.", "People go, why don't you pour the oil in the top."}, nil, []string{"Pour"}},
		{[]string{"Undo the hub nut.", "Some people will tell you, just cut the belt and put in a link belt."}, nil, []string{"Cut", "link"}},
		{[]string{"Undo the hub nut.", "If yours is the geared one, none of this.", "You've got a cover plate instead, and you undo it and lift it out."}, nil, []string{"cover plate"}},
		{[]string{"Undo the hub nut.", "Here is one small wire going to the clutch switch.", "That's what was holding the wheel on."}, nil, []string{"wire", "Hold"}},
		{[]string{"Undo the hub nut.", "There's a picture of the belt route, I'll stick that on there as well."}, nil, []string{"belt"}},
		{[]string{"Undo the hub nut.", "Flip it over, no, actually don't flip it over."}, nil, []string{"Flip"}},
		{[]string{"Take the plug lead off.", "Take the cover off.", "New seal in.", "Cover back on.", "Plug lead, I'm leaving that off till tomorrow."}, []string{"Fit the cover."}, []string{"Fit the plug lead"}},
		{[]string{"Undo the hub nut.", "Here's the seal.", "I get behind it with the puller, and out it pops."}, nil, []string{"Put behind"}},
		{[]string{"Undo the hub nut.", "Take the radiator cap off hot and it'll have the skin off your hand."}, nil, []string{"cap"}},
		{[]string{"Undo the hub nut.", "Lean on the spanner and you'll strip it.", "Pull the tab and you'll see a plug."}, []string{"Pull the tab."}, []string{"Lean"}},
		{[]string{"Undo the hub nut.", "Put your foot on the other arm.", "Get your foot under the tire."}, nil, []string{"foot"}},
		{[]string{"Undo the hub nut.", "The boy pulled the rope and the rope stayed in his hand."}, nil, []string{"rope"}},
		{[]string{"Undo the hub nut.", "There is one punch mark, one dot, on each clamp.", "The book says there's a second drain, on the block."}, nil, []string{"Mark", "Drain"}},
		{[]string{"Undo the hub nut.", "Left side's a left hand thread, so this one undoes clockwise."}, nil, []string{"clockwise"}},
		{[]string{"Undo the link bolts.", "They've all got thread locker on."}, nil, []string{"Put", "locker"}},
		{[]string{"Undo the pump bolts.", "Take the pump off.", "Mark it first with a pen so it goes back the same way."}, nil, []string{"Fit"}},
		{[]string{"Undo the pump bolts.", "Take the pump off.", "Give all of that a good wash out."}, nil, []string{"washer"}},
		{[]string{"Undo the wheel nut.", "It should be a nice slip fit on the spindle."}, nil, []string{"Fit"}},
		{[]string{"Undo the pivot bolt.", "You mustn't tighten it now."}, nil, []string{"Tighten"}},
		{[]string{"Take the drum off.", "See, she's sitting on nothing right now."}, nil, []string{"Sit", "nothing"}},
		{[]string{"Take the top off.", "I've got a bungee on mine."}, nil, []string{"bungee"}},
		{[]string{"Undo the wheel nut.", "It goes in and out at the top, that's the play."}, nil, []string{"Fit"}},
		{[]string{"The piston's in the bore.", "Run it out and back a few times."}, nil, []string{"out"}},
		{[]string{"New lever on the bracket.", "Lever on, off, on, off, three times."}, []string{"Fit the lever on the bracket."}, []string{"off"}},
		{[]string{"Pull the shaft out and back the nut off."}, []string{"Pull the shaft out.", "Remove the shaft nut."}, nil},
		{[]string{"Undo the guard bolts.", "The head snapped clean off the other one."}, nil, []string{"Snap"}},
		{[]string{"Undo the wheel nuts.", "I put one on backwards once."}, nil, []string{"backwards"}},
		{[]string{"Undo the wheel nut.", "The wheel nut in the book is eighty."}, nil, []string{"Fit"}},
		{[]string{"Undo the felt screws.", "A bit of the high heat stuff about a pea."}, nil, []string{"Stuff", "Heat"}},
		{[]string{"We're going to clean the carb.", "Take the cover off."}, nil, []string{"Clean"}},
		{[]string{"The left motor's been cutting out.", "Take the cover off."}, nil, []string{"Cut"}},
		{[]string{"Undo the roller bolts.", "The belt should lift about three inches in the middle."}, nil, []string{"Lift"}},
		{[]string{"Undo the hub nut.", "Tap the wheel, it should ring.", "Dull thud, bin it."}, nil, []string{"Bin"}},
		{[]string{"Undo the hub nut.", "I dropped a drum on my foot."}, nil, []string{"drum"}},
		{[]string{"Sliding door rollers on the van then.", "Undo the rail bolts."}, nil, []string{"Slide"}},
		{[]string{"Undo the trim screws.", "Three Torx bolts, T40, hold the hinge to the door."}, nil, []string{"Hold"}},
		{[]string{"Undo the castle nut.", "Nut up finger tight, back to the first slot."}, nil, []string{"Slot"}},
		{[]string{"Undo the cover nuts.", "Unplug it or your foot will find the pedal."}, nil, []string{"foot", "pedal"}},
		{[]string{"Undo the hub nut.", "That's the bearing in back of the fan."}, nil, []string{"bearing"}},
		{[]string{"Undo the hub nut.", "Put the kettle on.", "I got the spanner off the neighbour."}, nil, []string{"kettle", "spanner"}},
	} {
		t.Run(c.talk[len(c.talk)-1], func(t *testing.T) {
			checkSteps(t, c.talk, c.want, c.not)
		})
	}
}

// TestDoubtedThings: what is done to a thing that is not named says of which it is where that is
// plain, and doubts it where others may as well be meant.
func TestDoubtedThings(t *testing.T) {
	for _, c := range []struct {
		talk []string
		want []string
		not  []string
	}{
		{[]string{"The bearing's rough.", "Take it out.", "The seal's torn.", "Pull it out."}, []string{"Take the bearing out.", "Pull the seal out."}, []string{"perhaps"}},
		{[]string{"Two bolts on the bracket.", "Undo them.", "Bracket off."}, []string{"Undo the bracket bolts.", "Remove the bracket."}, []string{"perhaps"}},
		{[]string{"The carrier comes up on the lift.", "There's a spring in behind the lever, a washer, and a cup.", "I'm going to lift that out.", "The roller's dry."}, []string{"Lift this out (the spring, perhaps)."}, []string{"Lift the spring"}},
	} {
		t.Run(c.talk[0], func(t *testing.T) {
			checkSteps(t, c.talk, c.want, c.not)
		})
	}
}

// TestSwitches: a switch that cuts the power is switched off, one that is a part comes off.
func TestSwitches(t *testing.T) {
	checkSteps(t, []string{"Key switch off.", "Undo the hub nut."}, []string{"Switch off the key switch."}, []string{"Remove the key"})
	checkSteps(t, []string{"Main switch is off.", "Undo the hub nut."}, []string{"Switch off the main switch."}, []string{"Remove the main"})
	checkSteps(t, []string{"Two screws, pressure switch off.", "Undo the hub nut."}, []string{"Remove the pressure switch."}, []string{"Switch off"})
}

// checkSteps wants the steps of a talk to have all of want, and none to hold a word of not.
func checkSteps(t *testing.T, talk, want, not []string) {
	t.Helper()
	var got []string
	for _, s := range record(t, talk...).Steps {
		got = append(got, s.Text)
	}
	for _, w := range want {
		if !slices.Contains(got, w) {
			t.Errorf("steps %q lack %q", got, w)
		}
	}
	for _, w := range not {
		if strings.Contains(strings.Join(got, "\n"), w) {
			t.Errorf("steps %q have %q", got, w)
		}
	}
}

// TestDeniedOverABreath: captions break anywhere, and what is denied on one line is no order
// on the next.
func TestDeniedOverABreath(t *testing.T) {
	for _, c := range []struct {
		name  string
		lines []string
		want  []string // steps that must be among those told
		not   []string // words that none may hold
	}{
		{"do not", []string{"The gas struts are off. Do not", "drill them, and do not", "put them near the stove. Now undo", "the hinge bolts."}, []string{"Undo the hinge bolts."}, []string{"Drill", "stove"}},
		{"not going to", []string{"The tank is on the bench. I'm not going to", "cut the tank today. Undo the cap."}, []string{"Undo the cap."}, []string{"Cut"}},
		{"let it", []string{"Take the saw head off and don't let it", "hang on the lead."}, nil, []string{"Hang"}},
		{"you do not have to", []string{"undo the clamp bolt you don't have to", "take the hose off"}, []string{"Undo the clamp bolt."}, []string{"hose"}},
		{"would", []string{"Undo the drain plug. A longer bar would", "pull the thread out of the sump."}, []string{"Undo the drain plug."}, []string{"Pull"}},
		{"no, with its noun", []string{"Clean the bearing. No", "compressed air in the bearing, please."}, []string{"Clean the bearing."}, []string{"air"}},
		{"I'll is now", []string{"The old seal is out so i'll", "clean the bore"}, []string{"Clean the bore."}, nil},
	} {
		var b strings.Builder
		for i, line := range c.lines {
			fmt.Fprintf(&b, "%d\n00:00:%02d,000 --> 00:00:%02d,000\n%s\n\n", i+1, 4*i+1, 4*i+4, line)
		}
		clip, err := transcript.Read("x.srt", []byte(b.String()), transcript.Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, s := range Extract(transcript.Join(clip), lexicon.Default(), Job{}).Steps {
			got = append(got, s.Text)
		}
		for _, w := range c.want {
			if !slices.Contains(got, w) {
				t.Errorf("%s: got %q, want %q", c.name, got, w)
			}
		}
		for _, w := range c.not {
			if slices.ContainsFunc(got, func(s string) bool { return strings.Contains(s, w) }) {
				t.Errorf("%s: got %q, want no %q", c.name, got, w)
			}
		}
	}
}
