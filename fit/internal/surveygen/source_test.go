package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestGeneratedSurveyIsCurrent(t *testing.T) {
	out := filepath.Join(t.TempDir(), "survey_gen.go")
	if err := run("../../../testdata/survey/ansur2.csv", out); err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	want, err := os.ReadFile("../../survey_gen.go")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Error("fit/survey_gen.go is not what the survey gives: run go generate ./fit")
	}
}

func TestReadSurveySaysWhatIsWrong(t *testing.T) {
	const head = "sex,stature,crotchheight,sittingheight,trochanterionheight,kneeheightmidpatella," +
		"eyeheightsitting,overheadfingertipreachsitting,handlength,wristheight,waistheightomphalion\n"
	for _, c := range []struct{ name, table, want string }{
		{"nothing", "", "empty table"},
		{"a column short", strings.Replace(head, "handlength", "palmlength", 1) + "M,1,2,3,4,5,6,7,8,9,10\n", "no column handlength"},
		{"a number that is none", head + "M,1776,x,3,4,5,6,7,8,9,10\n", "row 2, crotchheight"},
		{"a sex that is none", head + "?,1,2,3,4,5,6,7,8,9,10\n", `sex "?" is neither M nor F`},
	} {
		_, err := readSurvey(strings.NewReader(c.table))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want %q", c.name, err, c.want)
		}
	}
}
