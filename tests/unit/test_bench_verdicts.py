"""The verdicts of moved points: no right drawing is called wrong by a small error, and none wrong right."""

from bench.verdicts import ERRORS, verdicts


def test_small_errors_of_points_turn_no_verdict_over():
    found = verdicts(6)
    assert {error for _, error in found} == set(ERRORS) and len(found) == 3 * len(ERRORS)
    for (_, error), counted in found.items():
        assert counted.total() == 10
        if error <= 0.1:
            assert counted["accept", "wrong"] == counted["wrong", "accept"] == 0
