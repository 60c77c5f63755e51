use crate::label::send::SendLabel;

pub(in crate::label) const fn text(label: SendLabel) -> &'static str {
    match label {
        SendLabel::Send => "Mandar",
        SendLabel::SentAndWaiting => "Mandado y en espera",
        SendLabel::To => "Para",
        SendLabel::Shared => "El archivo se entregó al modo de compartir de este aparato.",
        SendLabel::Saved => "El archivo está guardado y espera. Entréguelo y toque Entregada.",
        SendLabel::Kept => "No se mandó nada. La carpeta espera aquí.",
        SendLabel::Gone => {
            "El archivo no está en este aparato. Haga la carpeta otra vez y mándela."
        }
        SendLabel::PassOn => "Pasarla",
        SendLabel::HandedOn => "Entregada",
        SendLabel::DoNotSend => "No mandarla",
        SendLabel::Proof => {
            "Quien recibe la carpeta puede comprobar que nada cambió: ábrala y corra sha256sum -c manifest-sha256.txt dentro de ella."
        }
    }
}
