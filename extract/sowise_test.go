package extract

import (
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

// stepsOfTalk gives the steps of a talk, one after the other.
func stepsOfTalk(t *testing.T, talk string) string {
	var out []string
	for _, s := range Extract(talkOf(t, string(spokenAt(talk))), lexicon.Default(), Job{}).Steps {
		out = append(out, s.Text)
	}
	return strings.Join(out, " ")
}

// Work that is only told of how a thing runs, what for, or the way it is not done.
func TestSoWise(t *testing.T) {
	for _, c := range []struct{ talk, has, hasNot string }{
		// what a mark is made for
		{"With the chalk I make a line over the drum and the hub, so that the drum comes back in the same place. Then the drum comes off.", "Remove the drum", "Fit the drum"},
		{"I scratch the hub so the pulley goes back the same way. Then I pull the pulley off.", "Pull the pulley off", "Fit the pulley"},
		{"Pulley off. Clean the hub. Then the key in, so the pulley goes back on. Nut.", "Fit the pulley", ""},
		// where it runs
		{"The throttle cable, it goes to the lever, I unhook it and pull it out.", "Pull the throttle cable out", "Fit the throttle"},
		{"There's a band goes right round the canister. Undo the screw and pull it off.", "Pull the band off", "Fit the band"},
		{"Band off. Canister in. Then the band goes round the canister.", "Fit the band", ""},
		// the wrong way, and what is not there
		{"I take the spindle out. Slacken the outer ring first. The other way around you tighten the nut against the ring and you feel nothing.", "Slacken the outer ring", "Tighten the nut"},
		{"I squeeze the trigger, no, there's no trigger on this, so I push the lever and lift the lid off.", "Push the lever", "Squeeze"},
		{"I squeeze the trigger. No click. Then I lift the lid off.", "Squeeze the trigger", ""},
		// the other way round
		{"The seal goes in with the lip facing out, hang on, no, the other way. Then the drum goes in.", "Fit the seal.", "facing out"},
		{"The seal goes in with the lip facing out, sorry, other way round, lip facing in. Then the drum goes in.", "Fit the seal, lip facing in.", "out"},
		{"The seal goes in with the lip facing out, not the other way round. Then the drum goes in.", "lip facing out", ""},
		{"The seal goes in with the lip facing out. No, sorry, other way. No, I was right. Then the drum goes in.", "lip facing out", ""},
		// if
		{"so hoses on um if you move it put the carriage bolts back in the back and the lid goes on", "Fit the lid", "carriage bolts"},
		{"what else um the drain bung if you store it over winter take the bung out and leave it out", "", "bung"},
		{"cover off if you like undo the two screws and lift the flap off", "Lift the flap off", ""},
		// what has to be first
		{"so the breaker stays out till that back nut's on and i've checked the duct with the meter and the tap stays shut", "", "duct"},
		{"The guard stays off until the belt's on and I've set the tension. Lid on.", "Fit the lid", "tension"},
		{"Wind it in till it stops, and I've cleaned the flange. Cover off.", "Clean the flange", ""},
		{"I want to turn the fan when the back nut's on. Lid on.", "Fit the lid", "nut"},
		{"Hub apart. The left cone is worn. So the left cone goes back in and in the spring we replace it. Nut on.", "Fit the left cone", "Replace"},
		// the plan
		{"okay so this is the pump and what i'm gonna do is take it out clean the filter put a new seal in so the two bolts come out and the pump comes off", "Remove the pump", "seal"},
		{"Wheel's off. Now what I'm gonna do is undo these two screws and lift the cover off.", "Undo the two", ""},
		// what holds it
		{"The hoses, they're on spring clips. Pull them off.", "", "Fit the"},
		{"Motor up. It's on the studs, nuts on. The lid's on four screws.", "nuts", "four screws"},
		// one or the other
		{"Exhaust on. The nuts are five newton metres, I think it was, or eight, I'd have to look.", "Fit the exhaust", "to 5 N"},
		// as many as before
		{"Blade's held by six bolts in the carrier. Six bolts out, blade out. Clamp off, stick out. New blade in. Padlock on, guard off. You have to slacken the six bolts first.", "Slacken the six carrier bolts", "guard bolts"},
		// what is kept, carried, or only described
		{"I keep the spindle in, and let the rollers on a cloth. Cover off.", "Remove the cover", "spindle"},
		{"Keep the old gasket on while you drill it. Cover off.", "Remove the cover", "Fit the"},
		{"The lead's out of the wall and I've got the plug in my pocket. Cover off.", "Remove the cover", "plug"},
		{"We raised four hundred quid for the club. Cover off.", "Remove the cover", "Raise"},
		{"Blade out. Belt next. It runs on two pulleys. I check it for cracks. Blade in.", "Fit the blade", "Remove the belt"},
		{"Blade out. Belt next. It comes off with a twist. Blade in.", "Remove the belt", ""},
		// what is still to be fetched
		{"I pull the pin and the lever comes off. Lever on, pin in. A split pin of three millimetre I will bring along on Friday.", "Fit the pin", "split pin"},
		{"On his old one I did the same and it was the mast. So I undo the two bolts and lift the seat off.", "Undo the two", "Do the same"},
	} {
		got := stepsOfTalk(t, c.talk)
		if !strings.Contains(got, c.has) || c.hasNot != "" && strings.Contains(got, c.hasNot) {
			t.Errorf("%s\n\tgot %s", c.talk, got)
		}
	}
}
