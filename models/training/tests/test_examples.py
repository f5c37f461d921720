"""Which sounds become examples, and with which target."""
import examples
import spans

WORD = [[[5]]]


def corpus(fit):
    items = [["speech", "coswara", "a", 0, 18 * 16000, WORD], ["speech", "words", "b", 400000, 16000, WORD]]
    cut = [[1000, 8000, WORD, "coswara"], [2000, 8000, WORD, "librispeech"]]
    return examples.Corpus(items, cut, 1, fit=fit)


def test_what_is_too_long_is_played_faster_and_keeps_its_target():
    for fit, silent in ((("coswara",), False), ((), True)):
        c = corpus(fit)
        made = [c.example(False, 1620 * 160, .28) for _ in range(200)]
        assert any(e.targets == [[]] for e in made) == silent
        assert all(s.at + s.length <= 1620 * 160 for e in made for s in e.segments)


def test_what_our_own_voice_leaves_is_often_heard_with_nothing_else():
    c = corpus(("coswara",))
    c.by["own"] = [["own", "own", "", 500000, 60 * 16000, []]]
    made = [c.example(True, 300 * 160, .28) for _ in range(400)]
    alone = [e for e in made if e.noise and not e.segments]
    assert 10 <= len(alone) <= 60 and all(e.targets == [[]] and e.kind == "own" for e in alone)


def test_numbers_have_a_share_of_their_own():
    c = corpus(("coswara",))
    assert set(c.short) == {"words", "spans", "numbers"}
    c.short = {"numbers": 1.0}
    assert {c._clip()[0] for _ in range(20)} == {1000}


def test_a_span_tells_its_source():
    steps, words = 60, [[[5]], [[6]]]
    out = spans.cut(["speech", "coswara", "a", 100, steps * 480, words], -.5, [(10, 12), (40, 42)], steps)
    assert out and all(s[3] == "coswara" for s in out)
