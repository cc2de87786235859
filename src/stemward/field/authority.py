"""An authority of this computer's own, which vouches for its address on a private network and for nothing else.

Made once and kept in the notebook's folder, its key readable by its owner alone. Phones are told once to trust it.
"""

import datetime
import ipaddress
import os
from dataclasses import dataclass
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

FOLDER, KEY, CERTIFICATE = "share", "authority.key", "authority.crt"
AUTHORITY_DAYS, ADDRESS_DAYS = 3650, 90
"""How long they hold. Phones take addresses for at most 825 days (from memory); a fresh one is made at each start."""
PRIVATE = ("10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "127.0.0.0/8", "fc00::/7", "fe80::/10")
"""Networks for private use, for one link and for the computer itself: RFC 1918 (1996), 3927 (2005), 4193 (2005), 4291
(2006). The authority can vouch for nothing outside of them."""


class NotPrivate(ValueError):
    """An address that is none of a private network."""


@dataclass(frozen=True)
class Papers:
    """What a server with TLS needs. fingerprint: SHA-256 of the authority, for a person to compare."""

    certificate: Path
    key: Path
    authority: Path
    fingerprint: str


def is_private(address: str) -> bool:
    """True for an IP address of a private network."""
    try:
        ip = ipaddress.ip_address(address)
    except ValueError:
        return False
    return any(ip in network for network in map(ipaddress.ip_network, PRIVATE) if network.version == ip.version)


def papers_for(data: Path, address: str, now: datetime.datetime) -> Papers:
    """The papers for an address, the authority made if it is missing. Raises NotPrivate; OSError if it cannot write."""
    if not is_private(address):
        raise NotPrivate(address)
    folder = data / FOLDER
    folder.mkdir(parents=True, exist_ok=True)
    key, authority = _authority(folder, now)
    own = ec.generate_private_key(ec.SECP256R1())
    ip = ipaddress.ip_address(address)
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, address)])
    made = (
        _builder(name, authority.subject, own, now, ADDRESS_DAYS)
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(x509.SubjectAlternativeName([x509.IPAddress(ip)]), critical=False)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
        .add_extension(x509.AuthorityKeyIdentifier.from_issuer_public_key(key.public_key()), critical=False)
        .sign(key, hashes.SHA256())
    )  # fmt: skip
    _write(folder / "address.key", _pem(own))
    _write(folder / "address.crt", made.public_bytes(serialization.Encoding.PEM))
    digest = authority.fingerprint(hashes.SHA256()).hex().upper()
    shown = ":".join(digest[n : n + 2] for n in range(0, len(digest), 2))
    return Papers(folder / "address.crt", folder / "address.key", folder / CERTIFICATE, shown)


def _authority(folder: Path, now: datetime.datetime) -> tuple[ec.EllipticCurvePrivateKey, x509.Certificate]:
    """The one that is there, as long as it holds; else a new one."""
    if (folder / KEY).exists() and (folder / CERTIFICATE).exists():
        have = x509.load_pem_x509_certificate((folder / CERTIFICATE).read_bytes())
        key = serialization.load_pem_private_key((folder / KEY).read_bytes(), None)
        if isinstance(key, ec.EllipticCurvePrivateKey) and have.not_valid_after_utc - now > ADDRESS_LEFT:
            return key, have
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "Stemward on one computer")])
    networks = [x509.IPAddress(ipaddress.ip_network(one)) for one in PRIVATE]
    usage = x509.KeyUsage(
        digital_signature=False, content_commitment=False, key_encipherment=False, data_encipherment=False,
        key_agreement=False, key_cert_sign=True, crl_sign=True, encipher_only=False, decipher_only=False,
    )  # fmt: skip
    made = (
        _builder(name, name, key, now, AUTHORITY_DAYS)
        .add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True)
        .add_extension(usage, critical=True)
        .add_extension(x509.NameConstraints(permitted_subtrees=networks, excluded_subtrees=None), critical=True)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key.public_key()), critical=False)
        .sign(key, hashes.SHA256())
    )
    _write(folder / KEY, _pem(key))
    _write(folder / CERTIFICATE, made.public_bytes(serialization.Encoding.PEM))
    return key, made


ADDRESS_LEFT = datetime.timedelta(days=ADDRESS_DAYS)


def _builder(
    subject: x509.Name, issuer: x509.Name, key: ec.EllipticCurvePrivateKey, now: datetime.datetime, days: int
) -> x509.CertificateBuilder:
    hour = datetime.timedelta(hours=1)  # for phones whose clock is a little behind
    return (
        x509.CertificateBuilder().subject_name(subject).issuer_name(issuer).public_key(key.public_key())
        .serial_number(x509.random_serial_number()).not_valid_before(now - hour)
        .not_valid_after(now + datetime.timedelta(days=days))
    )  # fmt: skip


def _pem(key: ec.EllipticCurvePrivateKey) -> bytes:
    return key.private_bytes(
        serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    )


def _write(path: Path, raw: bytes) -> None:
    """Write a file that its owner alone can read."""
    path.unlink(missing_ok=True)
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    with os.fdopen(handle, "wb") as out:
        out.write(raw)
