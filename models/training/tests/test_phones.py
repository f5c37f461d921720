import phones


def test_known_guessed_and_unknown_words():
    assert ("S", "T", "AA", "P") in phones.prons("stop")
    assert len(phones.prons("tomato")) >= 2
    assert phones.prons("xqzvbk") == ()
    assert phones.prons("bank's", guess=True)[0][-2:] == ("K", "S")
    for word in ("yeah", "nope", "ouch", "okay", "ok"):
        assert phones.prons(word), word


def test_every_form_uses_the_phone_set():
    for word, forms in phones.EXTRA.items():
        for form in forms:
            assert set(form.split()) <= set(phones.PHONES), word


def test_target_gives_all_variants():
    aim = phones.target("I'm ready!")
    assert [len(w) >= 1 for w in aim] == [True, True]
    assert aim[1][0] == [phones.PDF[p] for p in "R EH D IY".split()]
