"""Sound and features of a batch, made on the GPU: gathering, rooms, colour, noise, level, breath, tempo, vocal-tract length.

All of it is endless: no example comes twice. "Clean" examples skip room and colour and have at least 22 dB SNR."""
import torch
import torch.nn.functional as F

from examples import SPEEDS
from mfcc import FRAME, HOP, RATE_HZ, WARPS, Mfcc

MAX_HOP = 213          # samples from frame to frame at the fastest tempo


def resampled(sound, speed, chunk=80000):
    """int16 `sound` played speed/20 times as fast, resampled in the frequency domain piece by piece."""
    parts = []
    for piece in sound.split(speed * chunk):
        size = len(piece) * 20 // speed
        spectrum, keep = torch.fft.rfft(piece.float()), size // 2 + 1
        spectrum = torch.nn.functional.pad(spectrum, (0, max(0, keep - len(spectrum))))[:keep]
        parts.append((torch.fft.irfft(spectrum, size) * (size / len(piece))).round().clamp(-32768, 32767).short())
    return torch.cat(parts)


class Augment:
    def __init__(self, sound, device, speeds=SPEEDS):
        """sound: int16 tensor with the whole corpus."""
        self.device, sound = device, sound.to(device)
        parts, self.offset, at = [], {}, 0
        for speed in speeds:
            parts.append(sound if speed == 20 else resampled(sound, speed))
            self.offset[speed] = at
            at += len(parts[-1])
        self.sound = torch.cat(parts)
        self.mfcc = Mfcc(WARPS).to(device)

    def uniform(self, rows, low, high):
        return torch.empty(rows, 1, device=self.device).uniform_(low, high)

    def chance(self, rows, share):
        return (torch.rand(rows, 1, device=self.device) < share).float()

    def gather(self, rows, samples, level=None):
        """[B, samples] with the segments of each row in place. With `level` each segment first gets that RMS."""
        plan = [(self.offset[s.speed] + s.start, s.length, b * samples + s.at, s.gain) for b, row in enumerate(rows) for s in row if s.length > 0]
        wav = torch.zeros(len(rows) * samples, device=self.device)
        if not plan:
            return wav.view(len(rows), samples)
        source, length, at = (torch.tensor(v, device=self.device) for v in list(zip(*plan))[:3])
        gain = torch.tensor([p[3] for p in plan], device=self.device)
        which = torch.repeat_interleave(torch.arange(len(plan), device=self.device), length)
        inside = torch.arange(len(which), device=self.device) - (length.cumsum(0) - length)[which]
        x = self.sound[(source[which] + inside).clamp_max(len(self.sound) - 1)].float()
        if level is not None:
            rms = (torch.zeros(len(plan), device=self.device).index_add_(0, which, x.square()) / length).sqrt().clamp_min(20.0)
            x = x * (level * 10 ** (gain / 20) / rms)[which]
        wav[at[which] + inside] = x
        return wav.view(len(rows), samples)

    def colour(self, rows, size):
        """Smooth random gain over frequency [rows, size/2+1]: tilt, ripples, low-pass, high-pass, telephone band."""
        f = torch.linspace(0, RATE_HZ / 2, size // 2 + 1, device=self.device)[None]
        octave, gain = torch.log2(f.clamp_min(40) / 500), torch.zeros(rows, size // 2 + 1, device=self.device)
        gain += self.chance(rows, .6) * self.uniform(rows, -4, 3) * octave
        for k in (.5, 1.0, 1.7):
            gain += self.chance(rows, .5) * self.uniform(rows, 0, 3) * torch.cos(k * octave * self.uniform(rows, .7, 1.3) * 2 + self.uniform(rows, 0, 6.3))
        gain -= self.chance(rows, .3) * self.uniform(rows, 6, 24) * torch.log2((f / self.uniform(rows, 1500, 7000)).clamp_min(1))
        gain -= self.chance(rows, .3) * self.uniform(rows, 6, 18) * torch.log2((self.uniform(rows, 80, 350) / f.clamp_min(20)).clamp_min(1))
        gain -= self.chance(rows, .08) * 60 * torch.sigmoid((f - self.uniform(rows, 3300, 3900)) / 60)
        return 10 ** (gain / 20)

    def rooms(self, rows, size=11200):
        """Random room responses [rows, size]: decay 0.12 to 0.9 s, direct to reverberant -4 to 14 dB, early reflections."""
        t = torch.arange(size, device=self.device)[None] / RATE_HZ
        late = torch.randn(rows, size, device=self.device) * torch.exp(-6.9 * t / self.uniform(rows, .12, .9)) * (t > self.uniform(rows, .001, .012))
        early = torch.randn(rows, size, device=self.device) * (torch.rand(rows, size, device=self.device) < .004) * torch.exp(-t / .02) * (t > .0008)
        h = late / late.norm(dim=1, keepdim=True) + .9 * self.uniform(rows, 0, 1) * early / early.norm(dim=1, keepdim=True).clamp_min(1e-3)
        h = h * 10 ** (-self.uniform(rows, -4, 14) / 20)
        h[:, 0] = 1
        return h

    def noise(self, examples, wav, size):
        """Noise of RMS 1 for each row (zero where it has none)."""
        rows, samples = wav.shape
        out = self.gather([e.noise for e in examples], samples, level=1.0)
        babble = [b for b, e in enumerate(examples) if e.kind == "babble"]
        if babble:
            talkers = torch.tensor([examples[b].talkers for b in babble], device=self.device)
            voices = torch.zeros(len(babble), samples, device=self.device)
            for k in range(int(talkers.max())):
                other = torch.randint(0, rows, (len(babble), 1), device=self.device)
                shift = torch.randint(0, samples, (len(babble), 1), device=self.device)
                index = (torch.arange(samples, device=self.device)[None] + shift) % samples
                voices += (k < talkers)[:, None] * self.uniform(len(babble), .5, 1) * torch.gather(wav[other[:, 0]], 1, index)
            out[babble] = voices / talkers[:, None].sqrt()
        coloured = [b for b, e in enumerate(examples) if e.kind == "coloured"]
        if coloured:
            f = torch.linspace(0, RATE_HZ / 2, size // 2 + 1, device=self.device)[None].clamp_min(30)
            z = torch.fft.rfft(torch.randn(len(coloured), samples, device=self.device), size)
            z = torch.fft.irfft(z * (f / 500) ** -self.uniform(len(coloured), 0, 1.2) * self.resonances(len(coloured), f), size)[:, :samples]
            z = z * self.swell(len(coloured), samples)
            out[coloured] = z / z.square().mean(1, keepdim=True).sqrt().clamp_min(1e-6)
        return out

    def resonances(self, rows, f):
        """Gain over frequency of half of the rows: ripples and a hump, as of water, fans, kettles and dishes."""
        octave = torch.log2(f / 500)
        db = sum(self.uniform(rows, 0, 5) * torch.cos(k * octave * self.uniform(rows, .7, 1.4) * 2 + self.uniform(rows, 0, 6.3)) for k in (.7, 1.6, 3.5))
        centre, width = self.uniform(rows, -1, 3.8), self.uniform(rows, .1, .8)
        db = db + self.uniform(rows, 0, 22) * torch.exp(-((octave - centre) / width) ** 2)
        return 10 ** (self.chance(rows, .5) * db / 20)

    def swell(self, rows, samples, step=1600):
        """Gain over time: two thirds of the rows swell and fade by some dB within tenths of a second; one in four clatters."""
        knots = torch.randn(rows, 1, samples // step + 2, device=self.device) * self.uniform(rows, 0, 8)[:, :, None]
        struck = (torch.rand(rows, 1, knots.shape[2], device=self.device) < .15) * 18.0 * self.chance(rows, .25)[:, :, None]
        db = F.interpolate(knots, size=samples, mode="linear", align_corners=True) * self.chance(rows, .66)[:, :, None]
        fade = -30.0 * (torch.arange(samples, device=self.device) % step)[None, None] / step
        return (10 ** (db / 20) + (10 ** (struck / 20) - 1).repeat_interleave(step, 2)[:, :, :samples] * 10 ** (fade / 20))[:, 0]

    def breathy(self, log_mel, share=.22):
        """Breathy to whispered voice: the harmonic structure fades into noise shaped by the same spectrum, the lowest bands
        (voicing) weaken and the highest rise. Simulated in the mel domain, where pitch is hardly seen anyhow."""
        rows = len(log_mel)
        amount = (self.chance(rows, share) * self.uniform(rows, .2, 1))[:, :, None]
        band = torch.arange(log_mel.shape[2], device=self.device)[None, None]
        cells = 2 + 6 * (band / 39.0) ** 2                        # degrees of freedom of the noise grow with the band's width
        ripple = torch.randn_like(log_mel) * (2 / cells).sqrt()
        tilt = -2.3 * (1 - band / 9.0).clamp_min(0) + .7 * (band - 20).clamp_min(0) / 19
        return log_mel + amount * (.7 * ripple + tilt)

    def masks(self, log_mel):
        """SpecAugment: two bands and some stretches of time set to the mean."""
        rows, frames, bands = log_mel.shape
        mean = log_mel.mean(1, keepdim=True)

        def stripe(axis, longest, share):
            width = torch.randint(0, longest, (rows, 1, 1), device=self.device) * (torch.rand(rows, 1, 1, device=self.device) < share)
            start = torch.randint(0, log_mel.shape[axis], (rows, 1, 1), device=self.device)
            i = torch.arange(log_mel.shape[axis], device=self.device)
            i = i[None, :, None] if axis == 1 else i[None, None]
            return (i >= start) & (i < start + width)
        for _ in range(2):
            log_mel = torch.where(stripe(2, 7, .8), mean, log_mel)
        for _ in range(max(1, frames // 200)):
            log_mel = torch.where(stripe(1, 11, .5), mean, log_mel)
        return log_mel

    @torch.no_grad()
    def __call__(self, examples, frames):
        """-> MFCC [B, frames, 40], rows and targets for ctc.loss."""
        rows, samples = len(examples), frames * MAX_HOP + FRAME
        wav = self.gather([e.segments for e in examples], samples, level=1200.0)
        size = -(-(samples + 11200) // 8192) * 8192
        clean = torch.tensor([e.clean for e in examples], device=self.device)[:, None]
        spectrum = torch.fft.rfft(wav, size)
        room = self.rooms(rows) * ((torch.rand(rows, 1, device=self.device) < .5) & ~clean)
        room[:, 0] = 1
        spectrum = spectrum * torch.fft.rfft(room, size) * torch.where(clean, torch.ones(1, device=self.device), self.colour(rows, size))
        wav = torch.fft.irfft(spectrum, size)[:, :samples]
        loud = F.avg_pool1d(wav.square()[:, None], 800, 800)[:, 0]
        wav = wav / loud.topk(max(3, loud.shape[1] // 8), dim=1).values.mean(1, keepdim=True).sqrt().clamp_min(1.0)   # active level 1
        snr = torch.tensor([e.snr_db for e in examples], device=self.device)[:, None]
        wav = wav + self.noise(examples, wav, size) * 10 ** (-snr / 20)
        level = torch.where(self.chance(rows, .04) > 0, self.uniform(rows, -10, 2), self.uniform(rows, -58, -12))
        wav = wav * 32768 * 10 ** (level / 20) + torch.randn_like(wav) * 10 ** self.uniform(rows, -.7, .8)
        wav = wav.round().clamp(-32768, 32767)
        hop = HOP * torch.exp(self.uniform(rows, -.36, .26))[:, 0]
        plain = (torch.rand(rows, device=self.device) < .4) | clean[:, 0] & (torch.rand(rows, device=self.device) < .5)
        hop = torch.where(plain, torch.full_like(hop, HOP), hop)
        content = torch.tensor([max((s.at + s.length for s in e.segments), default=0) for e in examples], device=self.device)
        hop = hop.maximum(content / (frames - 2)).clamp_max(MAX_HOP)
        warp = (len(WARPS) // 2 + torch.randn(rows, device=self.device) * 2.2).round().clamp(0, len(WARPS) - 1).long()
        warp = torch.where(torch.rand(rows, device=self.device) < .25, torch.full_like(warp, len(WARPS) // 2), warp)
        log_mel = self.masks(self.breathy(self.mfcc.log_mel(wav, hop, frames, warp)))
        pairs = [(b, t) for b, e in enumerate(examples) for t in e.targets]
        return log_mel @ self.mfcc.dct, [p[0] for p in pairs], [p[1] for p in pairs]

