"""The packet on paper."""

from stemward.paper.packet import packet, packet_data

__all__ = ["packet", "packet_data"]
