//! A certificate for the farm's own network, signed by an authority that is made for this one signature: it may speak for
//! the farm's names and for no other, and its key is gone as soon as it has signed.

use std::net::IpAddr;

use quantity::CivilDay;
use rcgen::{
    BasicConstraints, CertificateParams, CidrSubnet, DnType, Error, ExtendedKeyUsagePurpose, GeneralSubtree,
    IsCa, Issuer, KeyPair, KeyUsagePurpose, NameConstraints, date_time_ymd,
};

/// How long a certificate holds, days. Phones refuse certificates of their own authorities that hold longer than 825.
const HOLDS_D: i32 = 800;

/// Clocks on a farm may be behind: it holds from the day before.
const HOLDS_FROM_D: i32 = -1;

/// What the book's machine is called on the farm's network.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Names {
    /// Its name, where it has one.
    pub name: Option<String>,
    /// Its address.
    pub address: IpAddr,
}

/// What proves to a phone that it speaks with the book's machine. All of it is PEM.
#[derive(Clone, PartialEq, Eq)]
pub struct Certificate {
    /// The authority that phones are to install; none where the certificate was given and they know its authority already.
    pub authority: Option<String>,
    /// The certificate, with what it hangs on.
    pub chain: String,
    /// Its key.
    pub key: String,
}

impl Names {
    /// As they stand in addresses; the name first.
    pub fn all(&self) -> Vec<String> {
        self.name.iter().cloned().chain([self.address.to_string()]).collect()
    }

    /// What an address of a page begins with.
    pub fn host(&self) -> String {
        match (&self.name, self.address) {
            (Some(name), _) => name.clone(),
            (None, IpAddr::V4(address)) => address.to_string(),
            (None, IpAddr::V6(address)) => format!("[{address}]"),
        }
    }
}

/// Makes a certificate and the authority it hangs on.
///
/// - `called`: what the authority is called in a phone's list
/// - `today`: from when on it holds
///
/// # Errors
/// Of the cryptography: a name that no certificate can carry.
pub fn certificate(names: &Names, called: &str, today: CivilDay) -> Result<Certificate, Error> {
    let (authority, issuer) = authority(names, called, today)?;
    let key = KeyPair::generate()?;
    let mut own = holding(CertificateParams::new(names.all())?, today);
    own.distinguished_name.push(DnType::CommonName, names.host());
    own.key_usages = vec![KeyUsagePurpose::DigitalSignature];
    own.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
    own.use_authority_key_identifier_extension = true;
    let chain = own.signed_by(&key, &issuer)?.pem();
    // The issuer, and with it the authority's key, ends here; it was never written anywhere.
    Ok(Certificate { authority: Some(authority), chain, key: key.serialize_pem() })
}

/// An authority for some names and none besides, with its key.
fn authority(
    names: &Names,
    called: &str,
    today: CivilDay,
) -> Result<(String, Issuer<'static, KeyPair>), Error> {
    let key = KeyPair::generate()?;
    let mut params = holding(CertificateParams::default(), today);
    params.distinguished_name.push(DnType::CommonName, called);
    params.is_ca = IsCa::Ca(BasicConstraints::Constrained(0));
    params.key_usages = vec![KeyUsagePurpose::KeyCertSign];
    params.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
    params.name_constraints = Some(constraints(names));
    let certificate = params.self_signed(&key)?.pem();
    Ok((certificate, Issuer::new(params, key)))
}

/// A sort of name of which nothing is permitted would be free: without a name of its own, every name is excluded.
fn constraints(names: &Names) -> NameConstraints {
    let address = match names.address {
        IpAddr::V4(address) => CidrSubnet::V4(address.octets(), [255; 4]),
        IpAddr::V6(address) => CidrSubnet::V6(address.octets(), [255; 16]),
    };
    let name = names.name.clone().map(GeneralSubtree::DnsName);
    let excluded = if name.is_none() { vec![GeneralSubtree::DnsName(String::new())] } else { Vec::new() };
    NameConstraints {
        permitted_subtrees: name.into_iter().chain([GeneralSubtree::IpAddress(address)]).collect(),
        excluded_subtrees: excluded,
    }
}

fn holding(mut params: CertificateParams, today: CivilDay) -> CertificateParams {
    let date = |day: CivilDay| {
        date_time_ymd(day.year().into(), day.month().unsigned_abs(), day.day().unsigned_abs())
    };
    params.not_before = date(today.plus_days(HOLDS_FROM_D));
    params.not_after = date(today.plus_days(HOLDS_D));
    params
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;
    use std::time::Duration;

    use tokio_rustls::rustls::client::WebPkiServerVerifier;
    use tokio_rustls::rustls::pki_types::pem::PemObject;
    use tokio_rustls::rustls::pki_types::{CertificateDer, ServerName, UnixTime};
    use tokio_rustls::rustls::{RootCertStore, crypto::ring};

    use super::*;

    fn today() -> CivilDay {
        CivilDay::parse("2026-11-26").unwrap()
    }

    fn names(name: Option<&str>) -> Names {
        Names { name: name.map(str::to_owned), address: "192.168.4.2".parse().unwrap() }
    }

    /// Whether a phone that has installed an authority takes a certificate for a name, some days from now.
    fn is_taken(authority: &str, chain: &str, name: &str, after_d: i32) -> bool {
        let mut roots = RootCertStore::empty();
        roots.add(CertificateDer::from_pem_slice(authority.as_bytes()).unwrap()).unwrap();
        let provider = Arc::new(ring::default_provider());
        let phone = WebPkiServerVerifier::builder_with_provider(Arc::new(roots), provider).build().unwrap();
        let own = CertificateDer::from_pem_slice(chain.as_bytes()).unwrap();
        let seconds = u64::try_from(today().plus_days(after_d).number()).unwrap() * 86_400 + 43_200;
        let now = UnixTime::since_unix_epoch(Duration::from_secs(seconds));
        let name = ServerName::try_from(name.to_owned()).unwrap();
        use tokio_rustls::rustls::client::danger::ServerCertVerifier;
        phone.verify_server_cert(&own, &[], &name, &[], now).is_ok()
    }

    #[test]
    fn a_phone_takes_the_certificate_for_the_farms_names_and_while_it_holds() {
        let made = certificate(&names(Some("farm.home.arpa")), "Farm", today()).unwrap();
        let authority = made.authority.unwrap();
        for name in ["farm.home.arpa", "192.168.4.2"] {
            assert!(is_taken(&authority, &made.chain, name, 0), "{name}");
        }
        for name in ["other.home.arpa", "192.168.4.3", "example.org"] {
            assert!(!is_taken(&authority, &made.chain, name, 0), "{name}");
        }
        assert!(is_taken(&authority, &made.chain, "192.168.4.2", 799));
        assert!(!is_taken(&authority, &made.chain, "192.168.4.2", 801));
        assert!(!made.key.is_empty() && !authority.contains("PRIVATE"));
    }

    #[test]
    fn what_the_authority_would_sign_for_others_is_not_taken() {
        for own in [names(None), names(Some("farm.home.arpa"))] {
            let (authority, issuer) = authority(&own, "Farm", today()).unwrap();
            for name in ["example.org", "192.168.4.3", "2001:db8::1", "nofarm.home.arpa"] {
                let key = KeyPair::generate().unwrap();
                let mut params = holding(CertificateParams::new(vec![name.to_owned()]).unwrap(), today());
                params.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
                let forged = params.signed_by(&key, &issuer).unwrap().pem();
                assert!(!is_taken(&authority, &forged, name, 0), "{name} by an authority for {own:?}");
            }
        }
    }
}
