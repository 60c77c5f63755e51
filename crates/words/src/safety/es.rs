use super::SafetyMessage;
use crate::Es;

pub(super) fn text(message: &SafetyMessage, _: &Es) -> String {
    match message {
        SafetyMessage::Climbing => "Las reglas contra caídas en techos suelen empezar a los seis pies y aquí pueden ser más estrictas. Sigan la regla local y el plan de la compañía. Sin entrenamiento o sin amarre: quédense abajo.".to_owned(),
        SafetyMessage::Ice => "Hielo, escarcha, nieve o mojado: no suban. La nieve tapa tragaluces, orillas y base débil.".to_owned(),
        SafetyMessage::Wires => "Den por hecho que todo cable tiene corriente, también el cable de luz a la casa. Diez pies es la distancia mínima común, más con más voltaje. Si no pueden guardarla, llamen antes a la compañía de luz.".to_owned(),
        SafetyMessage::Structure => "Si la madera está pandeada, rajada o blanda, si el techo va a pesar más o se va a apilar carga, que la revise antes una persona calificada; este papel no lo hace.".to_owned(),
        SafetyMessage::LeadAndAsbestos => "Casa de antes de 1978 o de edad no sabida: puede haber reglas por pintura con plomo antes de cortar o raspar. Fieltro, loseta o forro viejos pueden tener asbesto: no los rompan para ver, llamen a alguien con licencia.".to_owned(),
        SafetyMessage::CodeNotes => "Son notas que alguien leyó en la fecha indicada. Decide la oficina de permisos: pregunte ahí.".to_owned(),
        SafetyMessage::PermitOffice => "La oficina de permisos decide lo que piden aquí las reglas de construcción: pregunte ahí antes de empezar.".to_owned(),
        SafetyMessage::Insurance => "Esta carpeta trae lo que se vio y se midió. La cobertura y el reclamo son cosa de la aseguradora y, donde lo pide la ley, de gente con licencia.".to_owned(),
    }
}
