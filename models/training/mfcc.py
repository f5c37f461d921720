"""The front end in PyTorch: Kaldi's MFCC, with vocal-tract length warping for training."""
import math

import torch
import torch.nn as nn

RATE_HZ, HOP, FRAME, FFT = 16000, 160, 400, 512       # samples
BANDS, LOW_HZ, HIGH_HZ = 40, 20.0, 7600.0
WARPS = (0.82, 0.86, 0.90, 0.94, 0.97, 1.0, 1.03, 1.07, 1.12, 1.17, 1.22)


def mel(hz):
    return 1127.0 * math.log(1 + hz / 700.0)


def warped(hz, alpha, knee_hz=4800.0):
    """Frequency axis of a vocal tract shorter by `alpha`, piecewise linear, 0 and 8 kHz fixed (Jaitly and Hinton 2013)."""
    top, edge = RATE_HZ / 2, knee_hz * min(alpha, 1.0)
    if hz <= edge / alpha:
        return hz * alpha
    return top - (top - edge) / (top - edge / alpha) * (top - hz)


def mel_bank(alpha=1.0):
    """[FFT/2+1, BANDS] triangular filters on the mel scale, as Kaldi's (the Nyquist bin is unused)."""
    edges = [mel(LOW_HZ) + i * (mel(HIGH_HZ) - mel(LOW_HZ)) / (BANDS + 1) for i in range(BANDS + 2)]
    bank = torch.zeros(FFT // 2 + 1, BANDS, dtype=torch.float64)
    for k in range(FFT // 2):
        m = mel(warped(k * RATE_HZ / FFT, alpha))
        for b in range(BANDS):
            low, centre, high = edges[b:b + 3]
            if low < m < high:
                bank[k, b] = (m - low) / (centre - low) if m <= centre else (high - m) / (high - centre)
    return bank


class Mfcc(nn.Module):
    """25 ms Povey window, 10 ms hop, pre-emphasis 0.97, 40 mel bands 20 to 7600 Hz, 40 cepstra, lifter 22, no dither."""

    def __init__(self, warps=(1.0,)):
        super().__init__()
        dct = torch.zeros(BANDS, BANDS, dtype=torch.float64)
        for k in range(BANDS):
            for n in range(BANDS):
                dct[n, k] = math.sqrt((1 if k == 0 else 2) / BANDS) * math.cos(math.pi / BANDS * (n + .5) * k)
            dct[:, k] *= 1 + 11 * math.sin(math.pi * k / 22)
        n = torch.arange(FRAME, dtype=torch.float64)
        self.register_buffer("window", ((.5 - .5 * torch.cos(2 * math.pi * n / (FRAME - 1))) ** .85).float())
        self.register_buffer("banks", torch.stack([mel_bank(a) for a in warps]).float())
        self.register_buffer("dct", dct.float())

    def power(self, frames):
        """[..., FRAME] samples to [..., FFT/2+1] power."""
        frames = frames - frames.mean(-1, keepdim=True)
        frames = frames - .97 * torch.cat([frames[..., :1], frames[..., :-1]], -1)
        return torch.fft.rfft(frames * self.window, FFT).abs() ** 2

    def log_mel(self, wav, hop=None, frames=None, warp=None):
        """wav [B, N] in int16 scale to [B, T, BANDS]. hop [B]: samples from frame to frame (160 is normal tempo; more is
        faster speech at the same pitch); warp [B]: index into the warps."""
        if hop is None:
            cut = wav.unfold(1, FRAME, HOP)
        else:
            start = (torch.arange(frames, device=wav.device)[None] * hop[:, None]).round().long()
            row = (torch.arange(len(wav), device=wav.device) * wav.shape[1])[:, None, None]
            cut = wav.reshape(-1)[row + start[:, :, None] + torch.arange(FRAME, device=wav.device)]
        power = self.power(cut)
        mels = power @ self.banks[0] if warp is None else torch.bmm(power, self.banks[warp])
        return mels.clamp_min(1.1920929e-7).log()

    def forward(self, wav):
        """wav [B, N] in int16 scale to MFCC [B, T, 40]."""
        return self.log_mel(wav) @ self.dct
