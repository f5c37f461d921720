"""Read the weights of am/final.mdl back into the PyTorch network, to go on training from a shipped model.

Batch norm was folded into the affine layers when the model was written, so the network is first loaded with an identity
batch norm and then re-based on real features: `calibrate` puts each layer's measured mean and variance into its batch norm
without changing what the network computes."""
import re
import struct

import numpy as np
import torch

from net import BLOCKS, Net


def affines(path):
    """name -> (weights [out, in x offsets], bias [out]) of every affine layer in the file."""
    data = open(path, "rb").read()
    out = {}
    for match in re.finditer(rb"<ComponentName> (\S+) <FixedAffineComponent> <LinearParams> ", data):
        p = match.end()
        kind, p = data[p:p + 3], p + (4 if data[p:p + 2] == b"CM" else 3)
        if kind in (b"CM2", b"CM3"):
            low, span, rows, cols = struct.unpack_from("<ffii", data, p)
            p += 16
            dtype, top = ("<u2", 65535) if kind == b"CM2" else ("u1", 255)
            weights = np.frombuffer(data, dtype, rows * cols, p).astype(np.float64) / top * span + low
            p += rows * cols * np.dtype(dtype).itemsize
        else:
            rows, cols = struct.unpack_from("<xixi", data, p)
            p += 10
            weights = np.frombuffer(data, "<f4", rows * cols, p).astype(np.float64)
            p += 4 * rows * cols
        assert data[p:p + 16] == b"<BiasParams> FV ", data[p:p + 16]
        count = struct.unpack_from("<xi", data, p + 16)[0]
        out[match[1].decode()] = weights.reshape(rows, cols), np.frombuffer(data, "<f4", count, p + 21).astype(np.float64)
    return out


def load(path):
    """The network of a final.mdl, batch norm at identity. The intermediate head, which the file lacks, stays random."""
    got = affines(path)
    net = Net(shape=(len(got["l0.affine"][1]), len(got["l1.affine"][1]), len(got["r0.a"][1])))

    def put(conv, name, offsets):
        weights, bias = got[name]
        conv.weight.data = torch.from_numpy(weights.reshape(weights.shape[0], offsets, -1).transpose(0, 2, 1).copy()).float()
        if conv.bias is not None:
            conv.bias.data = torch.from_numpy(bias).float()

    put(net.c0, "l0.affine", 5)
    put(net.c1, "l1.affine", 3)
    for i, (a, b) in enumerate(BLOCKS):
        put(net.fa[i], f"r{i}.a", len(a))
        put(net.fb[i], f"r{i}.b", len(b))
    put(net.out, "out.affine", 1)
    assert (net.c0.weight.shape[0], *net.fb[0].weight.shape[:2]) == net.shape
    for bn in [net.b0, net.b1, *net.bn]:
        bn.running_var.fill_(1 - bn.eps)                # identity, exactly
    return net.eval()


@torch.no_grad()
def calibrate(net, features):
    """Re-base an identity batch norm on `features` [B, T, 40]; eval-mode outputs stay the same."""
    stats, hooks = {}, []
    flat = features.reshape(-1, 40)
    mean, std = flat.mean(0), flat.std(0).clamp_min(1e-3)
    net.c0.bias.data += torch.einsum("oik,i->o", net.c0.weight, mean)
    net.c0.weight.data *= std[None, :, None]
    net.mean.copy_(mean)
    net.std.copy_(std)
    for bn in [net.b0, net.b1, *net.bn]:
        hooks.append(bn.register_forward_hook(
            lambda m, x, _: stats.__setitem__(m, (x[0].mean((0, 2)), x[0].var((0, 2), unbiased=False)))))
    net.eval()(features)
    for hook in hooks:
        hook.remove()
    for bn, (mean, var) in stats.items():
        bn.running_mean.copy_(mean)
        bn.running_var.copy_(var)
        bn.weight.copy_((var + bn.eps).sqrt())
        bn.bias.copy_(mean)
    return net
