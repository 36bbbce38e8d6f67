package normalize_test

import (
	"fmt"
	"math/big"

	"wrenchword/normalize"
)

func ExampleQuantities() {
	talk := "the clamp bolts are M6, five mil hex, and they get forty, no, sorry, ten newton metres"
	for _, q := range normalize.Quantities(talk) {
		fmt.Printf("%s: %s, said %q\n", q.Kind, q.Canonical, talk[q.Start:q.End])
	}
	// Output:
	// thread: M6, said "M6"
	// size: 5 mm, said "five mil"
	// torque: 10 N.m, said "ten newton metres"
}

func ExampleCheckTorque() {
	v, _ := normalize.ToNM(big.NewRat(89, 1), "lbf.ft")
	for _, f := range normalize.CheckTorque(v, v, normalize.TorqueContext{Thread: "M6"}) {
		fmt.Println(f.What + ": " + f.Why)
	}
	// Output:
	// too-much: 121 N.m is more than M6 takes: at K 0.20, F 16.7 kN (ISO 898-1 proof, 20.1 mm2 at 830 MPa), d 6 mm, class 10.9 (class assumed), T = K F d is 20.0 N.m
}

func ExampleCheckSize() {
	for _, f := range normalize.CheckSize("1.2 in", normalize.Drive) {
		fmt.Println(f.Ask)
	}
	// Output: Was 1/2 in meant, where 1.2 in was heard?
}

func ExampleRounded() {
	fmt.Println(normalize.Rounded(big.NewRat(22, 1), "lbf.ft", "N.m"))
	// Output: 30 N.m
}
