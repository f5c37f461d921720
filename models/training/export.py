"""PyTorch network to am/final.mdl, conf/ and graph/phones of a Vosk model. No Kaldi; the format is described in README.md.

usage: export.py NET.pt OUT_DIR [BITS 8|16|32] [BLANK_PENALTY 2]"""
import os
import struct
import sys

import numpy as np

from net import BLOCKS, LEFT, RIGHT, load_weights
from phones import NUM_PDFS, PDF, PHONES

# Kaldi phones: the blank outside words (silence for the endpointer), the blank inside a word, every phone by its place in the word.
PHONE_LIST = ["SIL", "BLK_I"] + [f"{p}_{place}" for p in PHONES for place in "BIES"]
PHONE_ID = {p: i + 1 for i, p in enumerate(PHONE_LIST)}
# Range over standard deviation from which 8 bits are too coarse. The first layer, with the feature normalisation folded in, has 74:
# in 8 bits it cost 8 to 23 points of phone error (RUNS.md).
WIDE = 24.0
MFCC_CONF = "--use-energy=false\n--num-mel-bins=40\n--num-ceps=40\n--low-freq=20\n--high-freq=7600\n--dither=0\n"
MODEL_CONF = """--min-active=200
--max-active=1500
--beam=12.0
--lattice-beam=3.0
--acoustic-scale=1.0
--frame-subsampling-factor=3
--frames-per-chunk=12
--endpoint.silence-phones=1
--endpoint.rule2.min-trailing-silence=0.4
--endpoint.rule3.min-trailing-silence=0.6
--endpoint.rule4.min-trailing-silence=1.0
"""


def pdf_of(name):
    return 0 if name in ("SIL", "BLK_I") else PDF[name[:-2]]


def self_loop(name):
    """Transition-id of staying in a phone."""
    return 2 * (PHONE_ID[name] - 1) + 1


def forward(name):
    """Transition-id of entering a phone."""
    return 2 * (PHONE_ID[name] - 1) + 2


def _i32(v):
    return b"\x04" + struct.pack("<i", v)


def _f32(v):
    return b"\x04" + struct.pack("<f", v)


def _f64(v):
    return b"\x08" + struct.pack("<d", v)


def _token(s):
    return s.encode() + b" "


def _ints(v):
    return b"\x04" + struct.pack("<i", len(v)) + np.asarray(v, "<i4").tobytes()


def _vector(v):
    v = np.asarray(v, "<f4")
    return b"FV " + _i32(len(v)) + v.tobytes()


def _matrix(m, bits):
    """Kaldi float matrix, or its 16- or 8-bit compressed form (one range for the whole matrix), which the reader expands.
    A matrix with outliers gets 16 bits where 8 were asked for: one step of 8 bits would be too coarse for the rest of it."""
    m = np.ascontiguousarray(m, "<f4")
    if bits == 8 and np.ptp(m) > WIDE * m.std():
        bits = 16
    if bits == 32:
        return b"FM " + _i32(m.shape[0]) + _i32(m.shape[1]) + m.tobytes()
    low, span, top = float(m.min()), float(m.max() - m.min()), 2 ** bits - 1
    codes = np.clip(np.rint((m - low) / span * top), 0, top).astype("<u2" if bits == 16 else "u1")
    return (b"CM2 " if bits == 16 else b"CM3 ") + struct.pack("<ffii", low, span, *m.shape) + codes.tobytes()


def transition_model():
    """One emitting state per phone, its own self-loop class; libvosk takes all costs from the graph."""
    n = len(PHONE_LIST)
    out = _token("<TransitionModel>") + _token("<Topology>") + _ints(range(1, n + 1)) + _ints([-1] + [0] * n) + _i32(-1) + _i32(1) + _i32(2)
    out += _i32(0) + _i32(0) + _i32(2) + _i32(0) + _f32(.5) + _i32(1) + _f32(.5) + _i32(-1) + _i32(-1) + _i32(0)
    out += _token("</Topology>") + _token("<Tuples>") + _i32(n)
    for p in PHONE_LIST:
        out += _i32(PHONE_ID[p]) + _i32(0) + _i32(pdf_of(p)) + _i32(pdf_of(p))
    logprobs = np.full(2 * n + 1, np.log(.5), np.float32)
    logprobs[0] = 0
    return out + _token("</Tuples>") + _token("<LogProbs>") + _vector(logprobs) + _token("</LogProbs>") + _token("</TransitionModel>")


def _affine(weights, bias, bits):
    return (_token("<FixedAffineComponent>") + _token("<LinearParams>") + _matrix(weights, bits) + _token("<BiasParams>")
            + _vector(bias) + _token("</FixedAffineComponent>"))


def _nonlinear(kind, dim):
    return (_token(f"<{kind}>") + _token("<Dim>") + _i32(dim) + _token("<ValueAvg>") + _vector([]) + _token("<DerivAvg>") + _vector([])
            + _token("<Count>") + _f64(0) + _token("<OderivRms>") + _vector([]) + _token("<OderivCount>") + _f64(0)
            + _token("<NumDimsSelfRepaired>") + _f64(0) + _token("<NumDimsProcessed>") + _f64(0) + _token(f"</{kind}>"))


def _sum(dim):
    return _token("<NoOpComponent>") + _token("<Dim>") + _i32(dim) + _token("<BackpropScale>") + _f32(1) + _token("</NoOpComponent>")


def _numbers(t):
    return t.detach().double().cpu().numpy()


def _fold(conv, bn):
    """Weights and bias of a convolution with its batch norm folded in."""
    gain = _numbers(bn.weight) / np.sqrt(_numbers(bn.running_var) + bn.eps)
    return _numbers(conv.weight) * gain[:, None, None], (_numbers(conv.bias) - _numbers(bn.running_mean)) * gain + _numbers(bn.bias)


def _flat(weights):
    """[out, in, offset] to Kaldi's [out, offset x in]."""
    return weights.transpose(0, 2, 1).reshape(weights.shape[0], -1)


def _append(source, offsets):
    parts = [source if o == 0 else f"Offset({source}, {o})" for o in offsets]
    return parts[0] if len(parts) == 1 else f"Append({', '.join(parts)})"


def nnet3(net, bits, priors=()):
    config, parts = ["input-node name=input dim=40"], []
    first, dim, neck = net.shape

    def add(name, source, data):
        config.append(f"component-node name={name} component={name} input={source}")
        parts.append((name, data))
    weights, bias = _fold(net.c0, net.b0)
    scale, mean = 1 / _numbers(net.std), _numbers(net.mean)
    bias = bias - np.einsum("oik,i->o", weights, mean * scale)         # the feature normalisation too
    add("l0.affine", _append("input", range(-2, 3)), _affine(_flat(weights * scale[None, :, None]), bias, bits))
    add("l0.relu", "l0.affine", _nonlinear("RectifiedLinearComponent", first))
    weights, bias = _fold(net.c1, net.b1)
    add("l1.affine", _append("l0.relu", (-1, 0, 1)), _affine(_flat(weights), bias, bits))
    add("l1.relu", "l1.affine", _nonlinear("RectifiedLinearComponent", dim))
    last = "l1.relu"
    for i, (a, b) in enumerate(BLOCKS):
        add(f"r{i}.a", _append(last, [3 * o for o in a]), _affine(_flat(_numbers(net.fa[i].weight)), np.zeros(neck), bits))
        weights, bias = _fold(net.fb[i], net.bn[i])
        add(f"r{i}.b", _append(f"r{i}.a", [3 * o for o in b]), _affine(_flat(weights), bias, bits))
        add(f"r{i}.relu", f"r{i}.b", _nonlinear("RectifiedLinearComponent", dim))
        add(f"r{i}.sum", f"Sum({last}, r{i}.relu)", _sum(dim))
        last = f"r{i}.sum"
    add("out.affine", last, _affine(_numbers(net.out.weight)[:, :, 0], _numbers(net.out.bias), bits))
    add("out.logsoftmax", "out.affine", _nonlinear("LogSoftmaxComponent", NUM_PDFS))
    config.append("output-node name=output input=out.logsoftmax objective=linear")
    out = _token("<Nnet3>") + b"\n" + ("\n".join(config) + "\n\n").encode() + _token("<NumComponents>") + _i32(len(parts))
    for name, data in parts:
        out += _token("<ComponentName>") + _token(name) + data
    return (out + _token("</Nnet3>") + _token("<LeftContext>") + _i32(LEFT) + _token("<RightContext>") + _i32(RIGHT)
            + _token("<Priors>") + _vector(priors))


def weaken_blank(net, nats):
    """Takes so much from the blank's score before the softmax. Trained with much noise the network leaves doubtful phones out; a word
    that is listened for is then missed. Chosen on odd-numbered recordings (RUNS.md)."""
    net.out.bias.data[0] -= nats


def export(net, out, bits=8):
    """Writes everything but the graph."""
    for folder in ("am", "conf", "graph/phones"):
        os.makedirs(f"{out}/{folder}", exist_ok=True)
    open(f"{out}/am/final.mdl", "wb").write(b"\0B" + transition_model() + nnet3(net.eval(), bits))
    open(f"{out}/conf/mfcc.conf", "w").write(MFCC_CONF)
    open(f"{out}/conf/model.conf", "w").write(MODEL_CONF)
    kind = {"B": "begin", "I": "internal", "E": "end", "S": "singleton"}
    with open(f"{out}/graph/phones/word_boundary.int", "w") as f:
        for p, i in PHONE_ID.items():
            f.write(f"{i} {'nonword' if p == 'SIL' else kind[p[-1]]}\n")


if __name__ == "__main__":
    network = load_weights(sys.argv[1])
    weaken_blank(network, float(sys.argv[4]) if len(sys.argv) > 4 else 2.0)
    export(network, sys.argv[2], int(sys.argv[3]) if len(sys.argv) > 3 else 8)
    print(sys.argv[2], os.path.getsize(f"{sys.argv[2]}/am/final.mdl") / 1e6, "MB")
