"""The acoustic network. Every operation has an exact counterpart in Kaldi's nnet3.

Two convolutions (the second with stride 3: one output each 30 ms), then residual blocks of two small affine layers around
a bottleneck. Five blocks look both ways, five only back, so that the look-ahead is 180 ms."""
import torch
import torch.nn as nn
import torch.nn.functional as F

from phones import NUM_PDFS

# Offsets of the first and the second affine layer of a block, in steps of 30 ms.
BLOCKS = [((-1, 0), (0, 1))] * 5 + [((-2, 0), (-2, 0))] * 5
# Channels of the first convolution, of the residual path and of the bottlenecks. Files tell their own shape (`shape_of`).
SHAPE = (192, 512, 160)
RIGHT = 2 + 1 + 3 * sum(b[-1] + a[-1] for a, b in BLOCKS)      # 10 ms frames of look-ahead: 18
LEFT = 2 + 1 - 3 * sum(a[0] + b[0] for a, b in BLOCKS)         # 10 ms frames of history: 78
MID = 5                                                        # the intermediate CTC head sits behind this block


def _taps(dim_in, dim_out, offsets, bias):
    return nn.Conv1d(dim_in, dim_out, len(offsets), dilation=offsets[1] - offsets[0], bias=bias)


class Net(nn.Module):
    def __init__(self, drop=0.1, shape=SHAPE):
        super().__init__()
        first, dim, neck = self.shape = tuple(shape)
        self.register_buffer("mean", torch.zeros(40))
        self.register_buffer("std", torch.ones(40))
        self.c0, self.b0 = nn.Conv1d(40, first, 5), nn.BatchNorm1d(first)
        self.c1, self.b1 = nn.Conv1d(first, dim, 3, stride=3), nn.BatchNorm1d(dim)
        self.fa = nn.ModuleList(_taps(dim, neck, a, False) for a, _ in BLOCKS)
        self.fb = nn.ModuleList(_taps(neck, dim, b, True) for _, b in BLOCKS)
        self.bn = nn.ModuleList(nn.BatchNorm1d(dim) for _ in BLOCKS)
        self.drop = nn.Dropout(drop)
        self.out, self.mid = nn.Conv1d(dim, NUM_PDFS, 1), nn.Conv1d(dim, NUM_PDFS, 1)

    def forward(self, x):
        """MFCC [B, T, 40] to log-probabilities [B, ceil(T/3), 40]; while training also those of the intermediate head.
        The first and last frame are repeated for context, as libvosk does."""
        frames = x.shape[1]
        steps = (frames + 2) // 3
        x = ((x - self.mean) / self.std).transpose(1, 2)
        right = RIGHT + 3 * (steps - 1) - (frames - 1)
        x = torch.cat([x[:, :, :1].expand(-1, -1, LEFT), x, x[:, :, -1:].expand(-1, -1, max(0, right))], 2)
        if right < 0:
            x = x[:, :, :right]
        x = self.drop(F.relu(self.b0(self.c0(x))))
        x = self.drop(F.relu(self.b1(self.c1(x))))
        mid = None
        for i, (a, b) in enumerate(BLOCKS):
            y = self.drop(F.relu(self.bn[i](self.fb[i](self.fa[i](x)))))
            left = -(a[0] + b[0])
            x = x[:, :, left:left + y.shape[2]] + y
            if i + 1 == MID and self.training:
                mid = self.mid(x)
        logp = F.log_softmax(self.out(x).transpose(1, 2).float(), -1)
        if not self.training:
            return logp
        mid = F.log_softmax(mid.transpose(1, 2).float(), -1)
        return logp, mid[:, mid.shape[1] - steps:]      # without the history that only later blocks use


def shape_of(state):
    """The shape of the net whose weights these are."""
    return state["c0.weight"].shape[0], state["c1.weight"].shape[0], state["fa.0.weight"].shape[0]


def load_weights(path, drop=0.1):
    """The net of a net.pt, whatever its shape, for evaluation."""
    state = {k: v.float() if v.is_floating_point() else v for k, v in torch.load(path, map_location="cpu").items()}
    net = Net(drop, shape_of(state))
    net.load_state_dict(state)
    return net.eval()


def grow(net, state, start=.1):
    """Loads the weights of a net with a narrower bottleneck or fewer blocks. New channels of a bottleneck first change nothing; a new
    block, behind the old ones, begins with a share `start` of a fresh block's output (at 0 its rectifier would never wake)."""
    ours = net.state_dict()
    for name, old in state.items():
        part = tuple(slice(0, n) for n in old.shape)
        if name.startswith("fb.") and name.endswith("weight"):
            ours[name].zero_()
        ours[name][part] = old
    for i, bn in enumerate(net.bn):
        if f"bn.{i}.weight" not in state:
            ours[f"bn.{i}.weight"].fill_(start)
    net.load_state_dict(ours)
    return net
