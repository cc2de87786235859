"""Judgement about what to do: ways weighed, a plan drawn up, and the same plan worked again."""

from stemward.plan.draw_up import draw_up, targets_of
from stemward.plan.verify import Verified, verify
from stemward.plan.write import as_data, code_of, to_json

__all__ = ["Verified", "as_data", "code_of", "draw_up", "targets_of", "to_json", "verify"]
