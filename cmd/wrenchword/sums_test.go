package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"wrenchword/normalize"
)

func runSum(cmd *cobra.Command, in string, args ...string) (string, error) {
	var out bytes.Buffer
	cmd.SetArgs(args)
	cmd.SetOut(&out)
	cmd.SetErr(&out)
	cmd.SetIn(strings.NewReader(in))
	cmd.SilenceUsage, cmd.SilenceErrors = true, true
	err := cmd.Execute()
	return out.String(), err
}

func TestQuantitiesCommand(t *testing.T) {
	out, err := runSum(newQuantitiesCmd(), "Torque it to 25 Nm.\n\nthree eighths drive, and an M8 by 30\n", "--format", "jsonl")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(out), "\n")
	if len(lines) != 3 {
		t.Fatalf("%d lines:\n%s", len(lines), out)
	}
	var q quantityLine
	if err := json.Unmarshal([]byte(lines[0]), &q); err != nil {
		t.Fatal(err)
	}
	if q.Line != 1 || q.Text != "25 Nm" || q.Kind != normalize.Torque || *q.Low != 25 || *q.SIHigh != 25 || q.SIUnit != "N.m" || q.Canonical != "25 N.m" || q.Start != 13 || q.End != 18 {
		t.Errorf("%+v", q)
	}
	if err := json.Unmarshal([]byte(lines[2]), &q); err != nil || q.Line != 3 || q.Canonical != "M8 x 30 mm" {
		t.Errorf("%+v %v", q, err)
	}
	for _, bad := range []string{"45", "1,25 mm", "0 Nm", "99999999 Nm", "45 flurbs", "", "4.5.6 mm"} {
		if _, err := runSum(newQuantitiesCmd(), "", bad); !errors.Is(err, normalize.ErrBadInput) {
			t.Errorf("%q: error %v, want bad input", bad, err)
		}
	}
	if _, err := runSum(newQuantitiesCmd(), "", "--", "-5 Nm"); !errors.Is(err, normalize.ErrBadInput) {
		t.Errorf("negative torque: %v", err)
	}
	for _, good := range []string{"Flip it over and do the other six.", "45 Nm", "M8x30", "20-25 Nm", "3/8 in", "abc"} {
		if _, err := runSum(newQuantitiesCmd(), "", good); err != nil {
			t.Errorf("%q: %v", good, err)
		}
	}
	if _, err := runSum(newQuantitiesCmd(), "", "--format", "xml", "45 Nm"); err == nil {
		t.Error("unknown format taken")
	}
}

func TestReckonCommand(t *testing.T) {
	for _, c := range []struct{ args, want string }{
		{"wrench|--torque|40 lbf.ft|--arm|12 in|--adapter|4 in", "30 lbf.ft"}, // TM 9-2350-277-40&P
		{"wrench|--torque|19 foot pounds|--arm|22\"|--adapter|3\"", "16.72 lbf.ft"},
		{"wrench|--torque|50 lbf.in|--prevailing|30 lbf.in", "80 lbf.in"}, // TB 43-0218
		{"preload|--thread|M8|--class|8.8|--torque|25 N.m|--k|0.2", "15.62 kN"},
		{"preload|--thread|M20|--class|8.8|--preload|132.3 kN|--k|0.18", "476.3 N.m"}, // Shigley
		{"gearing|--driving|15|--driven|45", "3"},
		{"gearing|--driving|15|--driven|45|--new-driving|14|--speed|100 km/h", "93.33 km/h"},
		{"chain|--pitch|12.7 mm|--driving|15|--driven|45|--centre|500 mm", "110"}, // 109.3, up to even
		{"chain|--chain|520|--measured|257 mm|--pitches|16|--limit|1", "1.181 percent"},
		{"chain|--chain|520|--sprocket|525", "does not fit"},
		{"chain|--chain|520|--driving|15|--driven|45|--links|110|--new-driven|46|--slot-back|10 mm|--slot-forward|20 mm", "slot left then, back"},
		{"chain|--slack|30 mm|--slack-low|20 mm|--slack-high|28 mm|--how|on the side stand, midway", "too loose by"},
	} {
		out, err := runSum(newReckonCmd(), "", strings.Split(c.args, "|")...)
		if err != nil {
			t.Errorf("%s: %v", c.args, err)
			continue
		}
		if !strings.Contains(out, c.want) || !strings.Contains(out, "formula") || !strings.Contains(out, "source") || !strings.Contains(out, "maker's manual") {
			t.Errorf("%s: want %q in\n%s", c.args, c.want, out)
		}
		js, err := runSum(newReckonCmd(), "", append(strings.Split(c.args, "|"), "--format", "json")...)
		var v map[string]any
		if err != nil || json.Unmarshal([]byte(js), &v) != nil || v["formula"] == "" || v["caution"] == "" {
			t.Errorf("%s: json %v\n%s", c.args, err, js)
		}
	}
	for _, args := range []string{
		"", "wrench", "wrench|--torque|40|--arm|12 in|--adapter|4 in", "wrench|--torque|4,5 N.m|--arm|12 in|--adapter|4 in",
		"wrench|--torque|0 N.m|--arm|12 in|--adapter|4 in", "wrench|--torque|-4 N.m|--arm|12 in|--adapter|4 in",
		"wrench|--torque|99999999999 N.m|--arm|12 in|--adapter|4 in", "wrench|--torque|abc|--arm|12 in|--adapter|4 in",
		"wrench|--torque|40 mm|--arm|12 in|--adapter|4 in", "wrench|--torque|40 N.m|--arm|12|--adapter|4 in", "wrench|--torque|0x10 N.m|--arm|12 in|--adapter|4 in",
		"preload|--thread|M8", "preload|--thread|Q8|--torque|25 N.m", "preload|--thread|M8|--class|wood|--torque|25 N.m", "preload|--thread|M8|--torque|25 N.m|--k|7",
		"preload|--thread|1/4|--torque|25 N.m", "gearing|--driving|15", "gearing|--driving|0|--driven|45", "gearing|--driving|1.5|--driven|45", "gearing|--driving|abc|--driven|45",
		"chain|--driving|15|--driven|45|--centre|600 mm", "chain|--chain|999|--driving|15|--driven|45|--centre|600 mm", "chain|--chain|520|--driving|15|--driven|45|--centre|10 mm",
		"chain|--slack|30 mm", "chain|--chain|520|--measured|257 mm", "gearing|--driving|15|--driven|45|--format|xml",
	} {
		a := []string{} // nil would be the arguments of the test itself
		if args != "" {
			a = strings.Split(args, "|")
		}
		if out, err := runSum(newReckonCmd(), "", a...); !errors.Is(err, normalize.ErrBadInput) {
			t.Errorf("%s: error %v, want bad input\n%s", args, err, out)
		}
	}
}
