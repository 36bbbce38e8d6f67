package extract

import (
	"math"
	"math/bits"
	"strings"
	"sync"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// What is left to do on a thing, told by a sentence that has a frame for it and room for
// any thing and any verb: "that just leaves the chain", "the mirror's still to fit",
// "all done bar the headlight", "still to do: chain, mirror".

// leftFrames are the ways of saying so, one a line. A word stands for itself, "a/b" for either
// of two, and one with "?" may be missing; the small words of slips may stand anywhere. In capitals stand
//
//	X a thing, or several: "the chain and the mirror"   P a pronoun, or a thing
//	V a verb, D its participle, G its gerund            W who will do it: "I'll", "he's going to"
//	T a later time: "tomorrow"                          Z what it waits for: "when the light's better"
//	A a time that a thing without a verb waits for      U the use that it has to be done before
//	^ the beginning of a clause                         $ the end of one
//	* up to four words                                  N words that say that the rest is done
const leftFrames = `
look-up
^ i never/always? forget/forgot what X 's/is/are/'re
^ i can/could? never/not/can't/couldn't/don't remember/recall what X 's/is/are/'re
* don't_know/no_idea/not_sure/dunno/haven't_a_clue what X 's/is/are/'re/get/gets/go/take/takes/want/wants/should/need/needs
^ the? S will/'ll/should tell/say/have/give me? what X
i want/need/have/'d_like/would_like to know what/how X
i want/need/have/'d_like/would_like to know how_tight/how_much X
look/looking/check up? X up? T
that/it/those/they/X 's/is/are/'re supposed/meant to be some/a_certain/so_many F
S 's/is/has/are worn_off/rubbed_off/faded/missing/torn/gone/unreadable/come_off/fallen_off/peeled_off/washed_off
F for/on/of X to_follow/to_come/to_be_found/unknown/tbc/pending
F for/on/of X look it/that up
F for/on/of X T
F for/on/of X i 'll/will look/find/get/check/dig/ask
^ somebody/someone/he/she/they/the_dealer/the_book * know/knows/tell/give/have/has/say/says me? the/that F for/on/of X
X 's/is/are/'re torqued/done/tightened/pulled_up to something/whatever
suspect
Q for/on X can't/couldn't be right
Q can't/couldn't be right
S * Q * that/it/which/surely/and/but 's/is/must_be/has_to_be/can't_be/sounds/looks/seems/'d/would never/surely? right/wrong/misprint/inch_pounds/too_much/too_high/a_lot/snap/strip/shear/break/rip
S * Q * i don't/wouldn't/can't believe/trust
it/that/this/somebody/someone/X says/said/say/'s_got/has_got/'s_written/wrote/written/put/'s_put/'s_down_as * Q * that/it/which/surely/and/but 's/is/must_be/has_to_be/can't_be/sounds/looks/seems/'d/would never/surely? right/wrong/a_misprint/inch_pounds/too_much/too_high/a_lot/snap/strip/shear/break/rip/way_too_much/far_too_much
it/that/this/somebody/someone/X says/said/say/'s_got/has_got/'s_written/wrote/written/put/'s_put/'s_down_as * Q * not doing that
'd/would snap/strip/shear/break/rip it/them/that at/with Q
Q for/on/in? those/that/it/them/X? that/it/which 's/is/sounds/looks/seems/must_be way/far/much? too_much/too_high/a_lot/wrong/never_right/a_misprint/ridiculous/mad/silly/daft
Q for/on/in X no/not_a chance
Q for/on/in E no/not_a chance
Q which/that 's/is/sounds/looks/seems/feels an_awful_lot/a_lot/a_bit_much/too_much/rather_a_lot/awfully_high/very_high/too_high
X at Q 's/is/sounds/looks/seems/must_be way/far/much? too_much/too_high/a_lot/wrong/a_misprint/ridiculous/mad
conflict
S says/say/said/has/have/has_got/have_got/'s_got/gives/give/wants/shows/show/had/reads Q * S says/say/said/has/have/has_got/have_got/'s_got/gives/give/wants/shows/show/had/reads Q
S says/say/said/has/have/has_got/have_got/'s_got/gives/give/wants/shows/show/had/reads Q * on/in/over/at S and/but? Q on/in/over/at S
Q on/in/over/at S * Q on/in/over/at S
Q on/in/over/at S * Q on/in/over/at the_other/another
S Q * S Q
it_says/they_say/it_'s Q there/here and/but? Q over? there/here
they/he/she/everyone/everybody/people/it says/say/reckon/reckons/said/told_me Q * i 've_always/always/'ve_never/have_always done/do/used/use/go/gone/went_to Q
S says/say/said/has/'s_got/gives/give/wants Q * i 've_always/always/'ve_never/have_always done/do/used/use/go/gone/went_to Q
two different figures/numbers/values/torques * Q and/or Q
S says/say/shows/show/gives/has/have/lists/list/'s_got a/an/two/one/three? Q * this/mine/these here? 's/is/are/'re a/an? Q
S says/shows/show/has/lists/'s_got/draws # X * only/just/there_'s/there_is/i_'ve_got #
unsure
i hope X 's/is/are/'re the_right_way/right/on_right/in_right/the_correct_way
i hope X goes/went/faces
i don't/can't/couldn't remember/recall/know if/whether X was/is/goes/went/should/has/had/sits/belongs/faces
not/no sure/idea if/whether X was/is/goes/went/should/has/had/sits/belongs/faces
i 'm? think/reckon/believe/guessing/guess/suppose/assuming that? X was/were/went/faced/sat/'s/goes/sits/faces/belongs on/in/under/over/above/below/behind/the_other/there/here/that_way/this_way/outside/inside/first/last
pretty/fairly/almost/reasonably/nearly sure that? X was/were/went/faced/sat/'s/goes/sits/faces/belongs on/in/under/over/above/below/behind/the_other/there/here/that_way/this_way/outside/inside/first/last
pretty/fairly/almost/reasonably/nearly sure that_'s_where/this_is_where/that_'s_how X was/were/went/goes/sits/'s
X could/might/may/can go/be/sit/fit either/any way
X could/might/may be/have_been/sit upside_down/back_to_front/the_wrong_way/on_the_wrong/on_the_other/inside_out/the_other_way
i didn't/never/wasn't see/look/looking/notice/mark/check/note which/how/where X
^ Q probably/possibly/perhaps/maybe $
Q or Q not/can't sure/certain/tell/remember
looks/looked like Q on/for X
guess
it/that/this can/could/might/may be * it/that/this/or can/could/might/may be
i 'm in_two_minds/undecided/torn/on_the_fence about X/P
i 'm a_bit/still on_the_fence about X/P
i do/'d/'ve not/n't say/swear/promise that? it/that/they 's/is/are/'re? good/fine/safe/sound/okay/ok/right
again
i want/need/have/'ve_got/'ll/'ll_have/'d_like to? V X/P again in/after/at H
V X/P again in/after/at H
after/in/within H V X/P again
after/in/within H i 'll/will/want_to/need_to/have_to V X/P again
go_over/go_round/go_around X/P again in/after/at H
recheck/retorque/retighten/retension/re-torque X/P in/after/at/once H
X wants/needs/want/need/'ll_need/'ll_want * again in/after/at H
short
^ i 'm/are/'re/am # X short
^ there 's/is/are/'re # X missing/short/lacking
^ # X missing/gone/lost/short
^ # X 's/has/is/have/are missing/gone/lost/vanished/disappeared
one/two/# of the/them/those? X? 's/has/is/have/are missing/gone/lost/vanished/disappeared/not_there
i 've? lost/dropped # X
can't/couldn't find the/my last/other/fourth/third/sixth/fifth X
the/my last/other/fourth/third/sixth/fifth/eighth X 's/has/is missing/gone/lost/vanished/disappeared/flown
^ no X in that/this/the/one/those hole/corner/side/end/one/place/holes
^ there 's/is no X in that/this/the/one hole/corner/side/end/one/place
where 's/is the/that other/last/fourth/third/sixth/fifth/eighth X
^ only # X/of_them/of_those in/on/left/holding it/this/that/there/them?
# X * should be #
on/in/back/tight/up/done bar/barring/except/except_for/apart_from/less/minus # X
# X * supposed to be #
^ X sheared/snapped/broke/stripped so/and there? 's/is only #
i 've/have? only found/fitted # X/$
# X * i 've/have? only found/fitted #
one/two/# of the/them/those/em X? was/were missing/gone
left-off
X i 'll/will/'m_gonna leave/leaving off $
that/it/those/they/these 's/is/are/'re/'ve/has/have to go back $
that/it/those/they/these 's/is/are/'re/'ve/has/have to go back on/in
i had X off/out * to go back
work/works/run/runs/ride/rides/drive/use/do/manage/go without X for_now/today/for_today/tonight/for_tonight/for_a_bit/for_a_while/till/until
you/i 'll/will have_to/need_to/want_to put/refit X back
late
^ i must/should/ought_to/need_to/have_to/'ve_got_to/gotta/want_to/'d_like_to/'ll_have_to/'ll_need_to/'d_better V X
^ must/should/need_to/gotta/got_to/have_to V X
X must/has_to/needs_to/have_to/need_to/ought_to/should be D
stand-in
T i 'll/will? replace/change/renew/swap X/P
T X/P gets/get replaced/changed/renewed/swapped
i 'll/will? replace/change/renew/swap X/P T
T comes/come/arrives/arrive/there_'s a/the new/proper/right? one/ones/X $
the old/worn/frayed/cracked/bent/split one 's/is used/going_back_in/going_back_on/back_in/back_on
X 's/is/are/'re on_order/on_back_order/back_ordered/ordered/in_the_post/in_the_mail/on_its_way/on_their_way/on_the_way
X on_order/on_back_order/in_the_post $
i 've/have ordered/sent_for X
i 'll/will/must/have_to/need_to/'ll_have_to/gotta/got_to order X/P
X i 'll/will/must/have_to/need_to/'ll_have_to order
X 's/is/are/'re/goes/go on/in the/my/that order/shopping/parts? list
^ there_'s X to order
^ that/it/this/they/those 's/is/are/'re just/only till/until/for? T
X 's/is/are/'re/'s_still the_old_one/the_old_ones/still_the_old_one/still_the_old_ones still/for_now/for_today $
X 's/is/are/'re/'s_still the_old_one/the_old_ones/still_the_old_one/still_the_old_ones * not/hasn't/haven't/isn't/aren't come/here/arrived/turned_up/in_yet
X 's/is/are/'re a/an? size/bit/touch/fraction too big/small/long/short/wide/narrow
it/that/they 's/is/are/'re a/one size/sizes too big/small/long/short
i want/need/'d_like a/an proper/better/right one/X on/in there/it/here
X 's/is/are/'re the_wrong size/length/one/sort/kind/type
^ new/spare/proper/right X 's/is/are/'re in/at/on the/my/his/her? home/house/car/van/shed/garage/post/shop/kitchen/office/work
X 's/is/are/'re a/an? borrowed/temporary/stand_in/loaned/lent one/ones/job/thing?
X 's/is/are/'re past_it/knackered/worn_out/had_it/tired/on_its_last_legs/shot * going/gone/goes back in/on
X 's/is/are/'re past_it/knackered/worn_out/had_it/tired/on_its_last_legs/shot * do for_now/till/until/for_today/for_tonight
no-lock
X broke/snapped/sheared so/and? there_'s none/no/nothing
X broke/snapped/sheared/'s_broken/has_broken/has_snapped/'s_snapped $
gone
X 's/is/has/are/have gone/missing $
X 's/is/has/are/have gone/missing from/out_of/off it/this/that/these/here/there/the/my/both/one
X on/in/off/for it/this/that/there/here/these/those/them one/side/end? 's/is/has/are gone/missing
no X on/in it/this_one/that_one/this_side/that_side/there/here at_all/whatsoever
unfinished
^ the? all/only/last/what/everything/thing/bit * left/remaining now? to_do? now? is/'s/are/will_be/be just? to? V? X
^ the? all/only/last/what/everything/thing/bit * left/remaining now? to_do? now? is/'s/are G X
^ the? all/only/last/what/everything/thing/bit/job * left/remaining/outstanding X $
^ the? all/only/last/main/other * to_do now? is/'s/are to? V? X
^ the? all/only/last/main/other * to_do now? is/'s/are G X
^ the? what/all/one/only/other/last/main thing/bit/job? * not/haven't/hasn't/ain't been? done/finished/tried yet/still? is/'s/are to? V? X
^ the? what/all/one/only/other/last/main thing/bit/job? * not/haven't/hasn't/ain't been? done/finished/tried yet/still? is/'s/are G X
^ that/which/this/it leaves me? with? X $
^ that/which/this/it leaves me? with? X to V
^ that/which/this/it leaves me? with? G X
^ left_with X to V
^ it/that/there? 's/is? just/only X left/remaining/outstanding/to_go/to_do
^ it/that/there? 's/is? just/only X left? to V
^ it/that? 's/is? just_a_case_of/a_case_of G X $
can't/couldn't get/do/lift/fit/put/hold/manage P on/in/off/up/back/out/over/down/there? by_myself/on_my_own/alone/single_handed/one_handed
i 've/have run_out $
i 've_got/have/'ve none/no_more/none_left here/left/with_me/in $
none/nothing in there/it/this/that yet
^ there 's/is/are/'re still X to V
^ there 's/is/are/'re X still/yet to V
^ there 's/is/are/'re X to V yet/still
^ there 's/is/are/'re X to V T/Z
^ there 's/is/are/'re still the/that/my X $
^ there 's/is/are/'re still? X still? to_go/to_do/outstanding/left_to_do/yet/to_come
^ i? 've/have/got still X to V
^ i 've/have still to V X
^ i 've/have to V X yet/still
X 's/is/are/'re to V yet/still
i wanna/want_to V X T
^ i 've/have got? X still/yet/left to V
^ i 've/have got? X to V yet/still/tomorrow/tonight
^ i 've/have got? X to_do yet/still/tomorrow/tonight
X 's/is/are/'re still/yet/left to V
X must/should/will/'ll still/yet be D
X 's/is/are/'re still/yet/left to_do/to_go/to_come/outstanding
X still/yet has/have/needs/wants/need/want/got to be? V/D
X still/yet needs/wants/need/want/requires G/D/done
X left to V
^ X to V/do $
^ still/left/yet to V X
^ X i haven't/'ve_not D
^ X i haven't/'ve_not touched/been_near/been_at/been_round with
^ you 'll/will need_to/have_to/want_to V X yourself/yourselves
X to V/do yet/still
X still to V/do/go
X has/needs/have/need to be D yet/still
X outstanding/remaining $
X 's/has/is got_to/to be D * that 's a? job for/when
^ bar/barring/except/except_for/apart_from/besides/aside_from/other_than/save_for X N
N bar/barring/except/except_for/apart_from/besides/aside_from/other_than/save_for/but X $
^ N just/only X to_go/to_do/left
^ N X to_go/left $
W come/go/get back and V X
W come/go/get back and V P T
W come/go/get back to X
^ come/go/get back and V X T
W V P T/Z
i wanna/want_to/'d_like_to V P again? T
i wanna/want_to/'d_like_to/need_to/have_to/'ll_have_to * it/them/that again T
i 'm/'re/am/are G X/P T
X i 'm/'re G T
^ V X * i_keep saying/forgetting/meaning/putting
W V X T/Z
T W V X
^ T i/he/she/they V X
^ i/he/she/they V X T
^ X i/he/she/they V T
^ X i/he/she/they do/leave T/Z
^ X W V T/Z
^ X W V it/that/them/those T/Z
X that I 'll/will V T/Z
X 's/is/are/'re for T
X gets/get/got D T/Z
X 's/is/are/'re being/getting/gonna_be/going_to_be/to_be D T/Z
X 'll/will/can/must/has_to/have_to/needs_to be/get D/G T/Z
X 'll/will/can/must/has_to/have_to/needs_to be/come/go/happen T
X will/'ll/can/has_to/have_to/must/'ll_have_to/will_have_to/gonna_have_to/'ll_just_have_to/may wait
leave/leaving/left/save/saving/keep/keeping X for/till/until/to T/Z
leave/leaving/left X for_now/for_the_moment/for_the_minute/for_today/for_tonight $
X i left/leave/'ve_left/'m_leaving/'ll_leave for_now/for_the_moment/for_today/for_tonight/T
X i 'll/will leave/save/keep T
^ X T $
^ X A $
^ X 's/is? T $
^ T X $
^ T it/that 's/is X $
^ G X W? do? T
^ G X that/which i 'll/will/can/could/must? do/leave/have T
^ G X that i do/'ll_do/will_do T
^ X that i do/'ll_do/will_do T
^ G X that/it 's/is a? job/thing/task for T
^ G X comes/gets_done/waits/'s/is T
T 's? job/task/work is/'s/will_be X
^ X 's/is a? T 's? job/task/thing
^ next/other job/thing/task/bit? 's/is X * T
that/so 's/is for? T X $
that/so 's/is for? T 's job X $
^ no/not time/light/daylight/energy/money for/to V? X
^ no/not time/light/daylight/energy for/to G X
ran/run/running out of time/light/daylight/day for/to V? X
^ need/needs/have/has/must/gotta/got/want to? V X U
i/somebody/someone/he/she/they/you need/needs/have/has/must/gotta/got/'ve/'ve_got/want/wants to? V X U
i/somebody/someone/he/she/they/you need/needs/have/has/must/gotta/got/'ve/'ve_got/want/wants to? V P U
somebody/someone/whoever needs/has/'s_got/will_need/'ll_need/wants/will_have/'ll_have to V X
i want to V X before i 'm/are/'re happy/satisfied/done
X has/needs/have/need/wants/want/must/ought/got to? be D U
X needs/wants/need/want/'ll_need/'ll_want G U
U X wants/needs/has_to_be/must_be/'ll_want/'ll_need G/D
U i/somebody/someone need/needs/have/has/must/gotta/got/'ve_got/want/'ll to? V X
^ work/still/left/things/jobs/bits? to_do is? X
^ still to_do is/'s/are? X
^ to_do is/are? X
^ left_to_do/left_over/outstanding/remaining/still_outstanding/jobs_left/things_left/work_left/not_done/not_done_yet/yet_to_do/still_to_do/unfinished/to_finish is/are/for/T? T? X
^ on the list for? T? X
^ the? to_do? list is/'s/reads? X
i/'ve forgot/forgotten to V X $
i/'ve forgot/forgotten X $
^ forgot/forgotten to V X $
^ remember/note_to_self/reminder/don't_forget/mustn't_forget/must_not_forget/not_to_forget to? V X T
^ remember/note_to_self/reminder/don't_forget/mustn't_forget/must_not_forget/not_to_forget to? V X U
i mustn't_forget/must_not_forget/must_remember/have_to_remember to? V X
don't_let_me_forget to? V? X
^ X not D/done $
^ X not D/done yet/still
^ X yet to be D
^ still no X $
X must/should still/yet be D
X/they/it must/has_to/have_to/needs_to/need_to still/yet? be bedded_in/bled/run_in/broken_in/set_up/adjusted/checked/tested
that/it/this 's/is/isn't not? allowed/fit/safe/legal to work/ride/drive/use/run/tow/start/fly/sail
that/it/they 'll/will need/want something/doing/sorting/seeing_to/fixing/mending/replacing/attention
not/haven't/hasn't got/gotten to/round_to/around_to X
X 's/is/are/'re missing $
X 's/is/are/'re still missing
X missing $
`

// slips are words that may stand anywhere in a frame.
var slips = set("just only really now also actually probably then so all obviously basically of course quite simply")

// frame is one way of saying that something is left, as its elements.
type frame struct {
	kind  string // the heading it stands under
	elems []elem
}

// elem is one element of a frame: a slot, or phrases of words any of which may stand there.
type elem struct {
	slot  byte
	maybe bool
	words [][]string
	first uint64 // a bit for each word that one of them begins with, shared by few
}

// frameIndex has the frames, and by each word which of them it tells of. A frame is tried only where it may begin, which most of them may nowhere in a clause.
type frameIndex struct {
	all    []frame
	words  map[string]*wordFrames
	slot   [len(slots)]frameSet // by the slot that they may begin with
	always frameSet             // those that may begin anywhere
}

// wordFrames are the frames that cannot be without a word, and those that may begin with it.
type wordFrames struct{ key, first frameSet }

// of gives the frames of a word, to be added to.
func (x *frameIndex) of(word string) *wordFrames {
	f := x.words[word]
	if f == nil {
		f = new(wordFrames)
		x.words[word] = f
	}
	return f
}

// begins notes how the frame of number n may begin: up to the first element that has to stand.
func (x *frameIndex) begins(n int, es []elem) {
	for _, e := range es {
		switch {
		case e.slot == '^':
			continue
		case e.slot == '*' || e.slot == '$':
			x.always.add(n)
			return
		case e.slot != 0:
			x.slot[strings.IndexByte(slots, e.slot)].add(n)
		}
		for _, ws := range e.words {
			if len(ws) == 1 && len(ws[0]) == 1 && strings.Contains(slots, ws[0]) {
				x.slot[strings.Index(slots, ws[0])].add(n)
			} else if e.slot == 0 {
				x.of(ws[0]).first.add(n)
			}
		}
		if !e.maybe {
			return
		}
	}
	x.always.add(n)
}

// at gives those of some frames that may begin at token i. open are the slots, by their
// numbers, that one of them may begin with.
func (x *frameIndex) at(s sentenceOf, i int, may *frameSet, open uint32) frameSet {
	if slips.has(s.r.toks[i].s) {
		return *may // and the frame begins after it
	}
	set := x.always
	if f := s.words[i-s.lo]; f != nil {
		set.join(&f.first)
	}
	for ; open != 0; open &= open - 1 {
		k := bits.TrailingZeros32(open)
		if s.mayStand(slots[k], i) {
			set.join(&x.slot[k])
		}
	}
	set.cut(may)
	return set
}

// frameSet is a set of frames by their number.
type frameSet [4]uint64

func (f *frameSet) add(n int)      { f[n>>6] |= 1 << (n & 63) }
func (f *frameSet) has(n int) bool { return f[n>>6]>>(n&63)&1 != 0 }

// next gives the first number from n on that is in the set, a large one where none is.
func (f *frameSet) next(n int) int {
	for k := n >> 6; k < len(f); k++ {
		if rest := f[k] >> (n & 63); rest != 0 {
			return n + bits.TrailingZeros64(rest)
		}
		n = (k + 1) << 6
	}
	return math.MaxInt
}

func (f *frameSet) join(g *frameSet) {
	for k := range f {
		f[k] |= g[k]
	}
}

func (f *frameSet) cut(g *frameSet) {
	for k := range f {
		f[k] &= g[k]
	}
}

func (f *frameSet) meets(g *frameSet) bool {
	return f[0]&g[0]|f[1]&g[1]|f[2]&g[2]|f[3]&g[3] != 0
}

// slotWords are the words that tell of a slot, for frames that have no rarer word of their own.
var slotWords = map[byte]string{
	'T': "tomorrow tonight monday tuesday wednesday thursday friday saturday sunday weekend week month morning evening afternoon day night time later winter spring service",
	'Z': "when once whenever soon after before", 'A': "when once whenever soon after before", 'U': "before", 'F': valueWord.text,
	'H': horizons.text, 'S': printed.text + " forum internet website online notes list lid box bag site place mate dealer bloke fella shop seller maker other another",
	'N': "done finished complete sorted ready everything all it us me together",
}

// common are words that tell least of which frame a sentence is in.
var common = set("i he she they it that this the a an is 's are 're was to on in for of and so not no have 've has do don't 'll will 'm what")

// dueFrames are the frames, made when they are first asked for.
var dueFrames = sync.OnceValue(makeFrames)

// makeFrames reads leftFrames.
func makeFrames() *frameIndex {
	index := &frameIndex{all: make([]frame, 0, 64*len(frameSet{})), words: make(map[string]*wordFrames, 1<<10)}
	// what the frames are made of, each in one piece; they are cut without iterators, which
	// would make something for each word
	elems, phrases, all := make([]elem, 0, 1<<11), make([][]string, 0, 1<<12), make([]string, 0, 1<<13)
	var key, words []string
	kind := ""
	for line, lines := "", leftFrames; lines != ""; {
		line, lines, _ = strings.Cut(lines, "\n")
		if !strings.Contains(line, " ") {
			kind = line
			continue
		}
		least, from := 1<<30, len(elems)
		key = key[:0]
		for word := ""; line != ""; {
			var e elem
			word, line, _ = strings.Cut(line, " ")
			word, e.maybe = strings.CutSuffix(word, "?")
			if len(word) == 1 && strings.Contains(slots, word) {
				e.slot = word[0]
			}
			words = words[:0]
			cost, first := 0, len(phrases)
			for phrase := ""; word != ""; {
				phrase, word, _ = strings.Cut(word, "/")
				slot := ""
				if len(phrase) == 1 && strings.Contains(slots, phrase) {
					slot = phrase
				}
				lo := len(all)
				for w := ""; phrase != ""; {
					w, phrase, _ = strings.Cut(phrase, "_")
					all = append(all, w)
				}
				phrases = append(phrases, all[lo:len(all):len(all)])
				e.first |= 1 << (trace(all[lo]) & 63)
				if slot != "" {
					e.first = ^uint64(0)
					if slotWords[slot[0]] == "" {
						cost = 1 << 30
					}
					words = append(words, strings.Fields(slotWords[slot[0]])...)
					cost += 5
					continue
				}
				best := all[lo]
				for _, w := range all[lo:] {
					if common.has(best) && !common.has(w) {
						best = w
					}
				}
				if common.has(best) {
					cost += 100
				}
				words, cost = append(words, best), cost+1
			}
			if !e.maybe && cost < least {
				least, key = cost, append(key[:0], words...)
			}
			e.words = phrases[first:len(phrases):len(phrases)]
			elems = append(elems, e)
		}
		f := frame{kind: kind, elems: elems[from:len(elems):len(elems)]}
		n := len(index.all)
		for _, w := range key {
			index.of(w).key.add(n)
		}
		index.begins(n, f.elems)
		index.all = append(index.all, f)
	}
	return index
}

// slots are the capitals and signs that stand for something in a frame.
const slots = "XPVDGWTZAU^$*NFQS#EH"

// due is what a frame was found to say.
type due struct {
	things  []int    // mentions
	nouns   []int    // tokens of things that no list has
	verb    int      // token of what is to be done, -1 where nothing says it
	hi      int      // token after the frame
	numbers [][2]int // tokens of the figures
	kind    string
	time    bool // a later time is said
	use     bool // the use that it has to be done before is said
}

// sentenceOf is a sentence with what its frames are matched against.
type sentenceOf struct {
	r      *reading
	lo, hi int                     // tokens
	words  *[mostWords]*wordFrames // by its words: the frames that each tells of, nil for none
}

// outstanding gives what frames say is left, where no end that was heard has it.
func (r *reading) outstanding(ends []*looseEnd, rec *Record) []*looseEnd {
	index := dueFrames()
	var out []*looseEnd
	var words [mostWords]*wordFrames
	for ci := 0; ci < len(r.clauses); {
		hi := ci + 1
		for hi < len(r.clauses) && r.clauses[hi].sentence == r.clauses[ci].sentence {
			hi++
		}
		s := sentenceOf{r, r.clauses[ci].lo, r.clauses[hi-1].hi, &words}
		if s.hi-s.lo <= mostWords {
			for i := s.lo; i < s.hi; i++ {
				words[i-s.lo] = index.words[r.toks[i].s]
			}
			for k := ci; k < hi; k++ {
				out = append(out, r.dueIn(s, k, index, ends, out)...)
			}
		}
		ci = hi
	}
	return out
}

// mostWords are in a sentence that is read for its frames.
const mostWords = 60

// dueIn gives what the frames that begin in a clause leave open.
func (r *reading) dueIn(s sentenceOf, ci int, index *frameIndex, ends, before []*looseEnd) []*looseEnd {
	c := &r.clauses[ci]
	var may frameSet // by the words from here on
	for i := c.lo; i < s.hi; i++ {
		if f := s.words[i-s.lo]; f != nil {
			may.join(&f.key)
		}
	}
	if may == (frameSet{}) || c.mood&(aside|greeting|listing|storied) != 0 || r.toks[s.lo].s == "if" || r.toks[c.lo].s == "if" || r.usedTo(c) {
		return nil
	}
	open := uint32(0)
	for k := range index.slot {
		if index.slot[k].meets(&may) {
			open |= 1 << k
		}
	}
	var at [mostWords]frameSet // by the words of the clause: the frames that may begin there
	var some frameSet
	for i := c.lo; i < c.hi; i++ {
		at[i-c.lo] = index.at(s, i, &may, open)
		some.join(&at[i-c.lo])
	}
	for fi := some.next(0); fi < len(index.all); fi = some.next(fi + 1) {
		f := &index.all[fi]
		if c.mood&asked != 0 && f.kind != "short" && f.kind != Suspect {
			continue
		}
		end := c.hi
		if f.elems[0].slot == '^' {
			end = r.skipped(c) + 1
		}
		for i := c.lo; i < min(end, c.hi); i++ {
			if !at[i-c.lo].has(fi) {
				continue
			}
			d := due{verb: -1, kind: f.kind}
			if !s.match(f.elems, i, &d) || d.time && (r.opensTalk(ci) || s.nextTalk(i, d.hi)) || d.kind == "unfinished" && r.toks[d.hi-1].s == "missing" && !r.standsSo(ci) && !(len(d.things) > 0 && r.mentions[d.things[0]].entry != nil && r.mentions[d.things[0]].entry.wasOff()) || r.doneAlready(ci) || d.kind == "late" && !r.lateIn(ci) || d.verb > 1 && r.toks[d.verb].s == r.toks[d.verb-2].s {
				continue
			}
			if es := r.dueEnds(ci, i, &d, ends, before); es != nil {
				return es
			}
		}
	}
	return nil
}

// opensTalk tells whether a clause stands where the talk says what job it is of: "tonight we
// check the valves".
func (r *reading) opensTalk(ci int) bool {
	w := r.talk.Words[r.toks[r.clauses[ci].lo].w]
	return w.At < min(60, 0.1*r.talk.Clips[w.Clip].Duration)
}

// lateIn tells whether a clause stands where the work is nearly over: what has to be done there
// is seldom the work in hand.
func (r *reading) lateIn(ci int) bool {
	w := r.talk.Words[r.toks[r.clauses[ci].lo].w]
	return w.At > 0.85*r.talk.Clips[w.Clip].Duration && !r.saidIn(&r.clauses[ci], "you")
}

// nextTalk tells of "next week it's the bilge pump", "next time we'll do the carb": what the
// next recording will be of.
func (s sentenceOf) nextTalk(lo, hi int) bool {
	next, ours := false, false
	for i := lo; i < hi; i++ {
		w := s.r.toks[i].s
		next = next || w == "next"
		ours = ours || w == "it" && (s.r.next(i) == "'s" || s.r.next(i) == "is" || s.r.next(i) == "'ll")
	}
	return next && ours && s.r.atTheEnd(int(s.r.toks[lo].cl))
}

// match tells whether elements stand from token i on, and what they say.
func (s sentenceOf) match(es []elem, i int, d *due) bool {
	r := s.r
	if len(es) == 0 {
		d.hi = i
		return true
	}
	e := &es[0]
	try := func(to int) bool { return s.match(es[1:], to, d) }
	if i < s.hi || e.slot == '$' {
		switch e.slot {
		case '^':
			return try(i)
		case '$':
			return (i >= s.hi || r.toks[i-1].brk >= brkComma || int(r.toks[i].cl) != int(r.toks[i-1].cl)) && try(i)
		case '*':
			for k := i; k <= min(i+4, s.hi); k++ {
				if try(k) {
					return true
				}
			}
			return false
		case 'X', 'P':
			if e.slot == 'P' && r.toks[i].is(wPronoun) && r.toks[i].men < 0 && try(i+1) {
				return true
			}
			return s.thing(es, i, d)
		default:
			n := s.slot(e.slot, i, d)
			if e.slot == 'Q' && n > 0 {
				d.numbers = append(d.numbers, [2]int{i, i + n})
				if try(i + n) {
					return true
				}
				d.numbers = d.numbers[:len(d.numbers)-1]
			} else if n > 0 && try(i+n) {
				return true
			}
		}
		words := e.words
		if e.slot != 0 || e.first>>(trace(r.toks[i].s)&63)&1 == 0 {
			words = nil
		}
		for _, ws := range words {
			if len(ws) == 1 && len(ws[0]) == 1 && strings.Contains("VDGTZXPES", ws[0]) {
				if s.match(append([]elem{{slot: ws[0][0]}}, es[1:]...), i, d) {
					return true
				}
				continue
			}
			if r.says(i, s.hi, ws) && try(i+len(ws)) {
				return true
			}
		}
	}
	if e.maybe && try(i) {
		return true
	}
	// a small word that may stand anywhere
	return i < s.hi && e.slot != '$' && slips.has(r.toks[i].s) && s.match(es, i+1, d)
}

// slot tells how many words at token i stand for a slot that is no thing, and notes in d
// what they say.
func (s sentenceOf) slot(slot byte, i int, d *due) (n int) {
	r := s.r
	switch slot {
	case 'V':
		n = s.verb(i, d)
	case 'D':
		n = s.participle(i, d)
	case 'G':
		n = s.gerund(i, d)
	case 'W':
		n = s.who(i)
	case 'T', 'Z', 'A':
		if n = s.later(i); n == 0 && slot != 'T' || slot == 'Z' {
			n = s.waits(i)
		}
		if slot == 'A' && n > 0 && !s.arrives(i, i+n) {
			n = 0
		}
		d.time = d.time || n > 0
	case 'U':
		n = s.useAfter(i)
		d.use = d.use || n > 0
	case 'N':
		n = s.done(i)
	case 'F':
		n = b2i(valueWord.has(r.toks[i].s) && !r.ofTool(i))
	case 'Q':
		n = s.number(i)
	case '#':
		n = s.count(i)
	case 'S':
		n = s.source(i)
	case 'E':
		n = s.sized(i)
	case 'H':
		n = s.horizon(i)
		d.time = d.time || n > 0
	}
	return n
}

// mayStand tells whether words at token i may stand for a slot.
func (s sentenceOf) mayStand(slot byte, i int) bool {
	if slot == 'X' || slot == 'P' {
		if slot == 'P' && s.r.toks[i].is(wPronoun) && s.r.toks[i].men < 0 {
			return true
		}
		_, _, to := s.thingAt(i)
		return to > 0
	}
	var d due
	return s.slot(slot, i, &d) > 0
}

// thingAt gives the thing that is named at token i, a mention or else the token of a noun,
// and where its name ends; 0 where none is.
func (s sentenceOf) thingAt(i int) (mention, noun, to int) {
	r := s.r
	k := i
	for k < s.hi && k < i+4 && r.toks[k].men < 0 && (r.toks[k].is(wDeterminer|wCounts) || r.toks[k].s == "bloody" || r.toks[k].s == "other" || r.toks[k].s == "damn") {
		k++
	}
	if k >= s.hi {
		return -1, -1, 0
	}
	if mi := int(r.toks[k].men); mi >= 0 && r.mentions[mi].lo <= k {
		m := &r.mentions[mi]
		if !r.topical(m) && m.kind&lexicon.Consumable == 0 && !(m.entry != nil && containers.has(m.head)) || m.hi > s.hi {
			return -1, -1, 0
		}
		return mi, -1, m.hi
	}
	if n := s.noun(k, i); n >= 0 {
		return -1, n, n + 1
	}
	return -1, -1, 0
}

// thing matches a thing, or several, at token i and then the elements after it.
func (s sentenceOf) thing(es []elem, i int, d *due) bool {
	r := s.r
	mi, noun, to := s.thingAt(i)
	if to == 0 {
		return false
	}
	nt, nn := len(d.things), len(d.nouns)
	undo := func() bool { d.things, d.nouns = d.things[:nt], d.nouns[:nn]; return false }
	if mi >= 0 {
		d.things = append(d.things, mi)
	} else {
		d.nouns = append(d.nouns, noun)
	}
	if s.more(es, to, d) || s.match(es[1:], to, d) {
		return true
	}
	// "the chain on the left", "the bolts for the guard"
	if to < s.hi && r.toks[to].is(wPreposition) {
		for p := to + 1; p < min(s.hi, to+4); p++ {
			if m := r.toks[p].men; m >= 0 {
				if s.match(es[1:], min(r.mentions[m].hi, s.hi), d) {
					return true
				}
				break
			}
			if p > to+1 && r.toks[p].is(wPlace) && s.match(es[1:], p+1, d) {
				return true
			}
		}
	}
	if to+1 < s.hi && (placeWords.has(r.toks[to].s) || r.toks[to].s == "here" || r.toks[to].s == "back" || r.toks[to].s == "up" || r.toks[to].s == "on" || r.toks[to].s == "in" || r.toks[to].s == "over" || r.toks[to].s == "again" || r.toks[to].s == "properly") {
		n := to + 1
		if r.toks[n].s == "on" || r.toks[n].s == "in" || r.toks[n].s == "up" {
			if s.match(es[1:], n+1, d) {
				return true
			}
		}
		if s.match(es[1:], n, d) {
			return true
		}
	}
	return undo()
}

// more matches further things of a list: "the chain, the mirror and the lamp".
func (s sentenceOf) more(es []elem, i int, d *due) bool {
	r := s.r
	if i >= s.hi {
		return false
	}
	if w := r.toks[i].s; w == "and" || w == "or" || w == "plus" || w == "then" {
		return s.thing(es, i+1, d)
	}
	return i > s.lo && r.toks[i-1].brk >= brkComma && (r.toks[i].is(wDeterminer) || r.toks[i].men >= 0) && s.thing(es, i, d)
}

// noun gives the token of a word at k that names a thing no list has: after its article,
// or a work that has a name of its own; -1 where none does.
func (s sentenceOf) noun(k, from int) int {
	r := s.r
	w := r.toks[k].s
	det := k > from && r.toks[k-1].is(wDeterminer)
	if det {
		if e := s.trial(k); e >= 0 {
			return e
		}
	}
	if !s.names(k) {
		return -1
	}
	det = det && !r.toks[k-1].is(wCounts)
	if !det && !chores.has(w) && !namedWorks.has(w) {
		return -1
	}
	if k+1 < s.hi && r.toks[k].brk < brkComma && r.toks[k+1].men < 0 && s.names(k+1) && !strings.HasSuffix(r.toks[k+1].s, "ing") && !r.toks[k+1].is(wLinking|wParticle|wPreposition) && det {
		return k + 1
	}
	return k
}

// trial gives the token that names a way of trying out, after its article at k: "a full hot cycle",
// "the load test"; -1 where none does.
func (s sentenceOf) trial(k int) int {
	r := s.r
	for e := k; e < min(s.hi, k+4) && r.toks[e].men < 0 && !r.toks[e].is(wPronoun|wSubject|wLinking|wOpener|wParticle|wPreposition); e++ {
		ends := e+1 == s.hi || r.toks[e].brk >= brkComma
		if trials.has(r.toks[e].s) && (e > k || ends) && !(e+1 < s.hi && trials.has(r.toks[e+1].s)) {
			return e
		}
		if ends {
			break
		}
	}
	return -1
}

// names tells whether a word may name something.
func (s sentenceOf) names(k int) bool {
	t := &s.r.toks[k]
	return len(t.s) >= 3 && t.qty < 0 && !stopWords.has(t.s) && !t.is(wPronoun|wSubject|wLinking|wOpener|wDrop|wInterjection|wParticle|wPreposition|wCounts) && !spanWords.has(t.s) && !noThings.has(t.s) && !(t.is(wForm) && !strings.HasSuffix(t.s, "ing"))
}

// namedWorks are what is done that has a name and no part to it: "tracking tomorrow".
var namedWorks = set("tracking alignment timing indexing bleeding wiring painting synchronising balancing earthing gapping lapping shimming testing coding calibration calibrating preload mapping sync bedding polishing routing")

// trials are the words for trying out what was worked on: "the load test", "a hot cycle".
var trials = wordsOf("trials")

// noThings are words after an article that name nothing of a machine.
var noThings = set("job jobs side sides rest lot thing things stuff bit bits lad lads boy kids wife dog cat kettle video film story question problem trouble trick point idea moment minute second hour hours bottom end start beginning fun tea coffee dinner lunch bill money price cost weather rain phone camera tape book manual page sheet number figure figures torque value spec tool tools man guy bloke fella mate list part parts truth reason difference answer half whole remainder other others same worst best hard easy nice left right top front back last first next only")

// spanWords are words of a time, which name no thing.
var spanWords = wordsOf("names of times")

// verb tells how many words from token i on say what is to be done.
func (s sentenceOf) verb(i int, d *due) int {
	r := s.r
	if wantingly.has(r.toks[i].s) || !r.toks[i].is(wVerb) && !fetchVerbs.has(r.toks[i].s) && !doVerbs.has(r.toks[i].s) || r.toks[i].is(wLinking) && !doVerbs.has(r.toks[i].s) || saysOnly.has(r.toks[i].s) || idleVerbs.has(r.toks[i].s) || r.toks[i].s == "take" && r.next(i) != "the" {
		return 0
	}
	d.verb = i
	n := 1
	for i+n < s.hi && n < 3 && r.toks[i+n].men < 0 && (r.toks[i+n].is(wParticle) || r.toks[i+n].s == "at" || r.toks[i+n].s == "to" || r.toks[i+n].s == "over" || r.toks[i+n].s == "round" || r.toks[i+n].s == "with") {
		n++
	}
	return n
}

// doVerbs stand for any work.
var doVerbs = set("do sort finish see look redo attend fix mend time tune check test try")

// participle tells how many words at token i tell what is to be done to a thing.
func (s sentenceOf) participle(i int, d *due) int {
	t := &s.r.toks[i]
	if leavesNone.has(t.s) {
		return 0
	}
	if t.s == "done" || t.s == "sorted" || t.s == "finished" || t.is(wForm) && !strings.HasSuffix(t.s, "ing") && !strings.HasSuffix(t.s, "s") || unlisted.has(t.s) {
		d.verb = i
		if i+1 < s.hi && (s.r.toks[i+1].is(wParticle) || s.r.toks[i+1].s == "again" || s.r.toks[i+1].s == "properly") && i+2 <= s.hi {
			return 2
		}
		return 1
	}
	return 0
}

// gerund tells how many words at token i tell what is to be done, as a gerund.
func (s sentenceOf) gerund(i int, d *due) int {
	t := &s.r.toks[i]
	if strings.HasSuffix(t.s, "ing") && len(t.s) > 4 && (t.is(wForm) || t.s == "doing") && !strings.HasSuffix(t.s, "thing") {
		d.verb = i
		if i+1 < s.hi && s.r.toks[i+1].men < 0 && s.r.toks[i+1].is(wParticle) {
			return 2
		}
		return 1
	}
	return 0
}

// who tells how many words at token i say who will do something: "I'll", "my mate's going to".
func (s sentenceOf) who(i int) int {
	r := s.r
	k := i
	switch w := r.toks[k].s; {
	case w == "i" || w == "he" || w == "she" || w == "they" || w == "somebody" || w == "someone":
		k++
	case (w == "my" || w == "the" || w == "his" || w == "her") && k+1 < s.hi && r.toks[k+1].men < 0 && folk.has(r.toks[k+1].s):
		k += 2
	default:
		return 0
	}
	from := k
	for k < s.hi && k < from+5 && (willWords.has(r.toks[k].s) || r.toks[k].s == "to" || r.toks[k].s == "'s" || r.toks[k].s == "'m" || r.toks[k].s == "'re" || r.toks[k].s == "is" || r.toks[k].s == "be" || r.toks[k].s == "has" || r.toks[k].s == "have" || r.toks[k].s == "just" || r.toks[k].s == "then" || r.toks[k].s == "wants" || r.toks[k].s == "needs" || r.toks[k].s == "might") && r.toks[k].s != "i" {
		k++
	}
	if k == from {
		return 0
	}
	return k - i
}

// folk are people who may do a work.
var folk = wordsOf("who may do a work")

// later tells how many words at token i say a later time.
func (s sentenceOf) later(i int) int {
	r := s.r
	k := i
	for k < s.hi && timeLeads.has(r.toks[k].s) {
		k++
	}
	if k >= s.hi {
		return 0
	}
	w, n := r.toks[k].s, r.next(k)
	at := 0
	switch {
	case days.has(w), w == "later":
		at = k + 1
		if n == "on" || n == "night" || n == "morning" || n == "evening" || n == "afternoon" {
			at++
		}
	case w == "next" && n == "service":
		at = k + 2
	case (w == "the" && n == "next" || w == "some" && n == "other") && spanWords.has(r.word(k+2)):
		at = k + 3
	case (w == "next" || w == "another") && (n == "day" || n == "time" || n == "night" || n == "week" || n == "weekend" || n == "month" || n == "year" || n == "morning" || n == "evening" || n == "afternoon" || n == "winter" || n == "spring") && !(w == "next" && n == "time" && k+2 < s.hi && r.toks[k+1].brk < brkComma && r.toks[k+2].is(wDeterminer|wSubject)),
		w == "this" && (n == "evening" || n == "afternoon" || n == "weekend" || n == "week" || n == "winter"),
		w == "the" && k > i && (n == "morning" || n == "evening" || n == "weekend" || (n == "spring" || n == "winter") && r.toks[k-1].s == "in" || n == "afternoon"):
		at = k + 2
	}
	if at == 0 || at > s.hi {
		return 0
	}
	if at < s.hi && (r.toks[at].s == "with" || r.toks[at].s == "if") || at < s.hi && s.waits(at) > 0 {
		return s.clauseEnd(at) - i // "tomorrow, when the light's better", "at the weekend with some help"
	}
	return at - i
}

// timeLeads may stand before a time.
var timeLeads = set("on at in by over for till until first thing come maybe")

// clauseEnd gives the token after the clause that goes on from token i, twelve words at most.
func (s sentenceOf) clauseEnd(i int) int {
	n := i + 1
	for n < s.hi && n < i+12 && s.r.toks[n-1].brk < brkComma {
		n++
	}
	return n
}

// waits tells how many words at token i say what a work waits for: "when the light's
// better", "once it's on the ground", "before she drives it".
func (s sentenceOf) waits(i int) int {
	r := s.r
	k := i
	switch w, n := r.toks[i].s, r.next(i); {
	case w == "when" || w == "once" || w == "whenever" || w == "after":
		k++
	case w == "as" && n == "soon" && r.word(i+2) == "as":
		k += 3
	case w == "before":
		return s.useAfter(i)
	default:
		return 0
	}
	end := s.clauseEnd(i)
	for ; k < end; k++ {
		switch r.toks[k].s {
		case "was", "were", "did", "had", "you", "you're":
			return 0 // "when you were all looking"
		}
	}
	if end-i < 3 {
		return 0
	}
	return end - i
}

// arrives tells whether a time, between two tokens, is one that the work itself never comes
// to: when something comes, or the light is better.
func (s sentenceOf) arrives(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if arriving.has(s.r.toks[i].s) {
			return true
		}
	}
	return false
}

// arriving are words of what is waited for away from the machine.
var arriving = set("come comes arrive arrives turns turn lands gets post new light better home help hand hands back ride run drive weather rain stops dry payday shop parts part money")

// useAfter tells how many words at token i say the use that something comes before: "before
// I ride it", "before anybody uses it", "before the first ride", "before it goes out".
func (s sentenceOf) useAfter(i int) int {
	r := s.r
	if r.toks[i].s != "before" {
		return 0
	}
	for k := i + 1; k < min(s.hi, i+7); k++ {
		if usingWords.has(r.toks[k].s) || (r.toks[k].s == "goes" || r.toks[k].s == "go" || r.toks[k].s == "gets") && (r.next(k) == "out" || r.next(k) == "back" || r.next(k) == "anywhere" || r.next(k) == "on" && r.word(k+2) == "the" || r.next(k) == "home" || r.next(k) == "near") {
			n := k + 1
			for n < s.hi && n < k+6 && r.toks[n-1].brk < brkComma {
				n++
			}
			return n - i
		}
	}
	return 0
}

// usingWords are of using a machine.
var usingWords = set("riding ride rides driving drive drives drove using use uses used running run runs start starts starting started launch launches launching tow tows towing towed fly flies flying sail sails ridden driven trip journey outing road season picks collects collect back leaves plug plugs plugged switch switches switched load loads handover customer owner mot works lifts")

// done tells how many words at token i say that all the rest is done.
func (s sentenceOf) done(i int) int {
	r := s.r
	for k := i; k < min(s.hi, i+7); k++ {
		switch w := r.toks[k].s; {
		case w == "done" || w == "finished" || w == "complete" || w == "sorted" || w == "ready":
			if p := r.prev(k); p == "when" || p == "once" || p == "get" || p == "not" || p == "isn't" {
				return 0
			}
			return k + 1 - i
		case w == "that" && k <= i+1 && (r.next(k) == "'s" || r.next(k) == "is") && (r.word(k+2) == "it" || r.word(k+2) == "everything" || r.word(k+2) == "all" || r.word(k+2) == "us" || r.word(k+2) == "me"):
			return min(k+3, s.hi) - i
		case w == "together" && r.prev(k) == "back":
			return k + 1 - i
		}
	}
	return 0
}

// number tells how many words at token i are a figure: "90", "a 13", "40 newton metres".
func (s sentenceOf) number(i int) int {
	r := s.r
	k := i
	for k < s.hi && (r.toks[k].s == "a" || r.toks[k].s == "an" || r.toks[k].s == "about" || r.toks[k].s == "like") {
		k++
	}
	if k >= s.hi {
		return 0
	}
	if q := r.toks[k].qty; q >= 0 && ours(r.qtys[q].Kind) {
		return min(r.qtys[q].hi, s.hi) - i
	}
	from := k
	for k < s.hi && r.toks[k].is(wCounts) && r.toks[k].qty < 0 && r.toks[k].men < 0 && r.toks[k].s != "a" && r.toks[k].s != "an" && r.toks[k].s != "no" && (k == from || r.toks[k-1].brk < brkComma) {
		k++
	}
	if k == from || !r.ofMachine(&r.clauses[r.toks[from].cl]) {
		return 0
	}
	if k < s.hi && (r.toks[k].s == "mil" || r.toks[k].s == "mill" || r.toks[k].s == "ish") {
		k++
	}
	return k - i
}

// count tells whether the word at token i says how many.
func (s sentenceOf) count(i int) int {
	t := &s.r.toks[i]
	return b2i(t.s == "a" || t.s == "another" || t.s == "one" || t.is(wCountOf) || t.is(wCounts))
}

// sized tells how many words at token i name a fastener by its thread: "an M6".
func (s sentenceOf) sized(i int) int {
	r := s.r
	k := i
	for k < s.hi && k < i+2 && r.toks[k].is(wDeterminer) {
		k++
	}
	if k < s.hi && r.toks[k].qty >= 0 && r.qtys[r.toks[k].qty].Kind == normalize.Thread {
		return min(r.qtys[r.toks[k].qty].hi, s.hi) - i
	}
	return 0
}

// source tells how many words at token i name who or what gives a figure: "the book", "page ten".
func (s sentenceOf) source(i int) int {
	r := s.r
	k := i
	for k < s.hi && k < i+3 && (r.toks[k].is(wDeterminer) || r.toks[k].s == "old" || r.toks[k].s == "new" || r.toks[k].s == "other" || r.toks[k].s == "workshop" || r.toks[k].s == "parts" || r.toks[k].s == "judged" || r.toks[k].s == "torque") {
		k++
	}
	if k >= s.hi {
		return 0
	}
	w := r.toks[k].s
	switch {
	case documents.has(w) || printed.has(w) || w == "forum" || w == "internet" || w == "website" || w == "online" || w == "notes" || w == "list" || w == "lid" || w == "box" || w == "bag" || w == "site" || w == "place":
		k++
	case (w == "mate" || w == "dealer" || w == "bloke" || w == "fella" || w == "shop" || w == "seller" || w == "maker") && k > i:
		k++
	case w == "page" || w == "sheet":
		k++
	case w == "another" || w == "other" && k > i:
		k++
	default:
		if k > i && r.toks[k-1].s == "other" || k > i && (r.toks[k-1].s == "one" || r.toks[k-1].s == "another") {
			return k - i
		}
		return 0
	}
	if k < s.hi && (r.toks[k].s == "list" || r.toks[k].s == "sheet" || r.toks[k].s == "manual" || r.toks[k].s == "book") {
		k++
	}
	if k < s.hi && r.toks[k-1].s == "page" && r.toks[k].is(wCounts) {
		k++
	}
	return k - i
}

// horizon tells how many words at token i say after how much use: "a couple of hundred k's",
// "fifty miles", "the first ride".
func (s sentenceOf) horizon(i int) int {
	r := s.r
	for k := i; k < min(s.hi, i+7); k++ {
		if r.toks[k].brk >= brkComma && !horizons.has(r.toks[k].s) {
			return 0
		}
		if horizons.has(r.toks[k].s) && k > i {
			k++
			if k < s.hi && r.toks[k].s == "'s" {
				k++
			}
			if k < s.hi && (r.toks[k].s == "running" || r.toks[k].s == "use" || r.toks[k].s == "work") {
				k++
			}
			return k - i
		}
	}
	return 0
}

// horizons are what use is counted in.
var horizons = wordsOf("counts of use")

// dueEnds makes the ends of what a frame says, nil where nothing stands open by it.
func (r *reading) dueEnds(ci, lo int, d *due, ends, before []*looseEnd) []*looseEnd {
	last := max(int(r.toks[max(d.hi-1, lo)].cl), ci)
	end := &looseEnd{kind: r.dueKind(d), before: BeforeUse, first: ci, last: last, lo: lo, hi: max(d.hi, lo+1), topic: -1, noun: -1, signal: "due"}
	if d.kind == "short" {
		end.signal = "short"
	}
	if lo, _ := r.nearBy(ci, 2, 0, 12); d.time && !d.use && d.verb < 0 && r.heardIn(lo, ci, "makeshift", "stand-in", "old-back", "lack", "poor:from", "poor:brief", "poor:renew", "poor:odd", "poor:excuse") {
		end.kind, end.before = ReplaceLater, BeforeLater // "there's foil round the fuse. Fuse tomorrow."
	} else if end.kind == ReplaceLater || d.kind == "again" || d.time && !d.use && (r.farOff(lo, d.hi) || strings.HasPrefix(end.due(r), "after")) {
		end.before = BeforeLater
	}
	if d.kind == "guess" { // of what was told before: "there's a mark. It could be a hair, it could be a crack."
		if ci == 0 || r.diagnoses(ci) || r.askedOf(end, ends) || r.askedOf(end, before) {
			return nil
		}
		r.aim(end, ci-1, openCue{r.clauses[ci-1].lo, r.clauses[ci-1].hi, "due"})
		end.sure = end.topic >= 0 && (end.sure || r.mentions[end.topic].cl == ci-1)
		return []*looseEnd{end}
	}
	var out []*looseEnd
	add := func(topic, noun int) {
		e := *end
		e.topic, e.noun, e.sure = topic, noun, topic >= 0 || noun >= 0
		if !r.dueOfKind(&e, d) {
			return
		}
		if !r.askedOf(&e, ends) && !r.askedOf(&e, before) && !(r.isWork(e.kind) && r.comesUp(&e, d.verb, d.time && r.onADay(&e))) {
			out = append(out, &e)
		}
	}
	if len(d.things)+len(d.nouns) > 1 && end.kind == Unfinished && d.kind == "unfinished" {
		end.signal = "recap" // a list: what is asked of anyway is not asked twice
	}
	if n := len(d.things) - 1; d.kind == "gone" && n > 0 && r.word(r.mentions[d.things[n]].from-1) != "and" {
		d.things = d.things[n:] // "one of the pins, the clip on it's gone"
	}
	for _, mi := range d.things {
		add(mi, -1)
	}
	for _, n := range d.nouns {
		add(-1, n)
	}
	if len(d.things)+len(d.nouns) == 0 {
		if d.kind == "stand-in" || d.kind == Suspect || d.kind == Conflict || d.kind == Unsure || d.kind == "again" || d.kind == LookUp || d.kind == "left-off" {
			oc := openCue{end.lo, end.hi, "due"}
			if d.kind != Conflict || !r.aimFrom(end) {
				r.aim(end, ci, oc)
			}
			if !r.askedOf(end, ends) && !r.askedOf(end, before) {
				out = append(out, end)
			}
			return out
		}
		r.aim(end, ci, openCue{end.lo, end.hi, "due"})
		end.sure, end.noun = false, -1
		if !r.askedOf(end, ends) && !r.askedOf(end, before) && (d.time && r.onADay(end) || !r.comesUp(end, d.verb, false)) {
			out = append(out, end)
		}
	}
	return out
}

// isWork tells whether a kind is of work that may be done later in the talk.
func (r *reading) isWork(kind string) bool {
	return kind != LookUp && kind != Suspect && kind != Conflict && kind != Unsure
}

// dueOfKind tells whether the thing of an end is one that what is left open may be of.
func (r *reading) dueOfKind(e *looseEnd, d *due) bool {
	if e.topic < 0 {
		return d.kind == "unfinished" || d.kind == "late"
	}
	m := &r.mentions[e.topic]
	switch d.kind {
	case LookUp:
		return r.tightenable(m) || m.entry != nil
	case Unsure:
		return m.kind&(lexicon.Part|lexicon.Fastener) != 0
	case "short":
		return m.kind&lexicon.Fastener != 0 || m.entry != nil && m.entry.wasOff()
	case "no-lock":
		return r.locks(m)
	case "gone":
		return m.kind&lexicon.Fastener != 0 || r.locks(m)
	case "left-off":
		return m.entry != nil
	}
	return true
}

// dueKind gives the kind of what is left, by what is to be done.
func (r *reading) dueKind(d *due) string {
	switch d.kind {
	case "short", "left-off":
		return NotRefitted
	case "no-lock":
		return LockMissing
	case "gone":
		if len(d.things) > 0 && r.locks(&r.mentions[d.things[0]]) {
			return LockMissing
		}
		return NotRefitted
	case "stand-in":
		return ReplaceLater
	case "again":
		return Unfinished
	case "guess":
		return Unsure
	case "unfinished", "late":
	default:
		return d.kind
	}
	if d.verb < 0 {
		return Unfinished
	}
	for _, l := range append(r.lex.Lemmas(r.toks[d.verb].s), r.toks[d.verb].s) {
		ps := r.lex.Patterns(l)
		if len(ps) == 0 {
			continue
		}
		switch ps[0].Action.Name {
		case "tighten", "torque":
			return NotTorqued
		case "lock":
			return LockMissing
		case "replace":
			if d.time && !d.use {
				return ReplaceLater
			}
		}
	}
	switch w := r.toks[d.verb].s; {
	case len(d.things) > 0 && r.locks(&r.mentions[d.things[0]]) && (w == "put" || w == "fit" || w == "get" || w == "find" || w == "do"):
		return LockMissing
	case (w == "put" || w == "putting" || w == "refit" || w == "refitting" || w == "reconnect") && len(d.things) > 0 && r.mentions[d.things[0]].entry != nil:
		if st, _ := r.mentions[d.things[0]].entry.state(); st == Removed {
			return NotRefitted
		}
	}
	return Unfinished
}

// askedOf tells whether one of some ends is of the same thing in the same breath.
func (r *reading) askedOf(e *looseEnd, ends []*looseEnd) bool {
	for _, p := range ends {
		if p.kind == "" || p.kind == Promise && p.signal != "next" {
			continue
		}
		near := r.clauses[r.toks[p.lo].cl].sentence == r.clauses[e.first].sentence
		for _, at := range p.also {
			near = near || r.clauses[r.toks[at].cl].sentence == r.clauses[e.first].sentence
		}
		if !near {
			continue
		}
		if p.signal == "back-to" && e.sure {
			p.kind = "" // "I'll come back to the chain"
			continue
		}
		if e.signal == "due" && e.sure && !p.sure && p.kind == e.kind && p.signal != "recap" {
			p.topic, p.noun, p.sure = e.topic, e.noun, true // "that's tomorrow's job, the chain"
			p.first, p.last = min(p.first, e.first), max(p.last, e.last)
		}
		if !e.sure || !p.sure || p.topic < 0 || e.topic < 0 || r.sameTopic(e.topic, p.topic) {
			return true
		}
	}
	return false
}

// comesUp tells whether the talk comes later to what is left: the same work, or any that
// completes it, is done to the thing, or it is told to be done. What is to be done is told
// at token at, -1 for any work; what is put off to another day is no other work of today.
func (r *reading) comesUp(e *looseEnd, at int, day bool) bool {
	from := max(e.hi, r.clauses[e.last].hi)
	verb := ""
	if at >= 0 && !doVerbs.has(r.toks[at].s) {
		verb = r.lemma1(r.toks[at].s)
	}
	same := func(mi int) bool {
		if e.topic < 0 {
			return e.noun >= 0 && r.mentions[mi].head == r.toks[e.noun].s
		}
		return r.sameTopic(mi, e.topic)
	}
	for i := range r.acts {
		a := &r.acts[i]
		if a.lo < from || !a.happened() || r.heardIn(a.cl, a.cl, "later", "undone", "remember", "left:time") {
			continue
		}
		switch a.action.Name {
		case "inspect", "set aside", "clean", "mark", "wait", "remove", "slacken":
			if verb == "" || a.verb < 0 || r.lemma1(r.toks[a.verb].s) != verb {
				continue
			}
		}
		own := a.verb >= 0 && verb != "" && r.lemma1(r.toks[a.verb].s) == verb
		if own && len(a.objects) == 0 && len(a.things) == 0 && !(r.lateIn(a.cl) && r.listed(a.cl)) {
			return true
		}
		if !own && (day || verb == "" && !completing[a.action.Name]) {
			continue
		}
		for _, mi := range a.objects {
			if same(mi) {
				return true
			}
		}
		if e.topic >= 0 && r.mentions[e.topic].entry != nil {
			for _, t := range a.things {
				if t == r.mentions[e.topic].entry {
					return true
				}
			}
		}
	}
	for k := e.last + 1; k < len(r.clauses); k++ {
		c := &r.clauses[k]
		if c.lo < from || c.mood&(negated|conditional|asked|other|hypothetical) != 0 {
			continue
		}
		named := e.topic < 0 && e.noun < 0 && verb != ""
		for _, mi := range c.mentions {
			named = named || same(mi)
		}
		if e.noun >= 0 {
			named = named || r.saidIn(c, r.toks[e.noun].s)
		}
		if named && r.tellsAsDone(c, verb) {
			return true
		}
	}
	return false
}

// dueVerb gives the token of what is to be done by the words of an end, -1 where they have none.
func (r *reading) dueVerb(e *looseEnd) int {
	for i := max(r.clauses[e.first].lo, e.lo-4); i < min(e.hi+4, r.clauses[e.last].hi); i++ {
		if t := &r.toks[i]; t.is(wVerb|wForm) && t.men < 0 && !t.is(wLinking) && !wantingly.has(t.s) && len(r.lex.Patterns(r.lemma1(t.s))) > 0 {
			return i
		}
	}
	return -1
}

// tellsAsDone tells of "that's the chain done", "chain's adjusted now".
func (r *reading) tellsAsDone(c *clause, verb string) bool {
	switch r.toks[c.lo].s {
	case "till", "until", "til", "before", "if", "unless":
		return false // "till the tracking's done"
	}
	for i := c.lo; i < c.hi; i++ {
		switch w := r.toks[i].s; w {
		case "done", "sorted", "finished":
			return r.prev(i) != "be" && r.prev(i) != "get" && r.prev(i) != "gets" && r.prev(i) != "getting"
		case "to", "will", "'ll", "needs", "wants", "gonna", "tomorrow", "later":
			return false
		default:
			if i == c.lo || !r.toks[i].is(wForm) || r.toks[i].men >= 0 || strings.HasSuffix(w, "ing") || strings.HasSuffix(w, "s") {
				continue
			}
			l := r.lemma1(w)
			if p := r.toks[i-1]; l == w && p.men < 0 && p.s != "is" && p.s != "'s" && p.s != "are" && p.s != "been" && p.s != "'re" {
				continue
			}
			if verb == l || verb == "" && r.completes(l) {
				return true
			}
		}
	}
	return false
}

// listed tells whether a clause stands in a sentence of three or more: "so: bleed it, pressure,
// two screws" tells off what is left.
func (r *reading) listed(ci int) bool {
	one := func(k int) bool {
		return k >= 0 && k < len(r.clauses) && r.clauses[k].sentence == r.clauses[ci].sentence
	}
	return one(ci-2) || one(ci-1) && one(ci+1) || one(ci+2)
}

// completing are actions after which nothing is left of a work that was not said by its verb.
var completing = map[string]bool{"adjust": true, "bleed": true, "fill": true, "lubricate": true, "fit": true, "tighten": true, "torque": true, "lock": true, "replace": true, "connect": true, "apply": true, "place": true, "test": true}

// completes tells whether a verb is of such an action.
func (r *reading) completes(verb string) bool {
	for _, p := range r.lex.Patterns(verb) {
		if completing[p.Action.Name] {
			return true
		}
	}
	return false
}
