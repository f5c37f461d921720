import numpy as np
import pytest
import torch

import ctc


def peaked(labels, classes=5, high=.98):
    p = np.full((len(labels), classes), (1 - high) / (classes - 1))
    p[np.arange(len(labels)), labels] = high
    return np.log(p)


def test_greedy_drops_blanks_and_repeats():
    assert ctc.greedy(torch.from_numpy(peaked([0, 1, 1, 0, 1, 2, 2, 0]))) == [1, 1, 2]


def test_edit_distance_is_levenshteins():
    assert ctc.edit_distance("kitten", "sitting") == 3          # the textbook example
    assert ctc.edit_distance("", "abc") == 3


def test_alignment_finds_the_place_of_each_phone():
    score, ends = ctc.align(peaked([0, 0, 1, 1, 0, 2, 0, 2, 2, 0]), [1, 2, 2])
    assert ends == [(2, 3), (5, 5), (7, 8)]
    assert score > -1.0


def test_cheapest_of_several_targets_counts():
    logp = torch.from_numpy(peaked([0, 1, 0, 2, 0])).float()[None]
    one = ctc.loss(logp, ctc.goals([0], [[1, 2]], "cpu"))
    both = ctc.loss(logp, ctc.goals([0, 0], [[3, 4], [1, 2]], "cpu"))
    assert both * 4 == pytest.approx(float(one) * 2, rel=1e-4)  # each is per phone of all targets
