"""The front end against kaldi-native-fbank, an independent implementation of Kaldi's features."""
import numpy as np
import pytest
import torch

import mfcc


def sound(seconds=1.0):
    rng, t = np.random.default_rng(3), np.arange(int(16000 * seconds)) / 16000
    return (3000 * np.sin(2 * np.pi * (150 + 40 * t) * t) + 800 * rng.standard_normal(len(t))).astype(np.float32)


def test_equals_kaldi():
    knf = pytest.importorskip("kaldi_native_fbank")
    options = knf.MfccOptions()
    options.frame_opts.dither = 0
    options.mel_opts.num_bins, options.mel_opts.low_freq, options.mel_opts.high_freq = 40, 20, 7600
    options.num_ceps, options.use_energy = 40, False
    x = sound()
    reference = knf.OnlineMfcc(options)
    reference.accept_waveform(16000, x.tolist())
    want = np.stack([reference.get_frame(i) for i in range(reference.num_frames_ready)])
    got = mfcc.Mfcc()(torch.from_numpy(x)[None])[0].numpy()
    assert got.shape == want.shape
    assert np.abs(got - want).max() < 2e-3


def test_hop_of_160_is_the_normal_tempo():
    front, x = mfcc.Mfcc(), torch.from_numpy(sound())[None]
    frames = front.log_mel(x).shape[1]
    same = front.log_mel(x, torch.tensor([160.0]), frames)
    assert torch.allclose(front.log_mel(x), same)


def test_warp_moves_formants_and_leaves_the_ends():
    assert mfcc.warped(1000, 1.1) == pytest.approx(1100)
    for alpha in mfcc.WARPS:
        assert mfcc.warped(0, alpha) == 0 and mfcc.warped(8000, alpha) == pytest.approx(8000)
        curve = [mfcc.warped(f, alpha) for f in range(0, 8001, 50)]
        assert all(b > a for a, b in zip(curve, curve[1:]))
    tone = torch.sin(2 * np.pi * 1000 * torch.arange(16000) / 16000)[None] * 5000
    front = mfcc.Mfcc(mfcc.WARPS)
    frames = front.log_mel(tone).shape[1]
    peaks = [int(front.log_mel(tone, torch.tensor([160.0]), frames, torch.tensor([i]))[0].mean(0).argmax()) for i in (0, 5, 10)]
    assert peaks[0] < peaks[1] < peaks[2]
