use crate::label::caution::CautionLabel;

pub(in crate::label) const fn text(label: CautionLabel) -> &'static str {
    match label {
        CautionLabel::C1Whole => {
            "Mire antes de alzar la escalera: cables, hielo, viento, suelo blando. La revisión desde el suelo es completa. Lo que no se sabe se puede cotizar como no sabido."
        }
        CautionLabel::C1Line => {
            "Mire antes de alzar la escalera. La revisión desde el suelo es completa."
        }
        CautionLabel::C2Whole => {
            "La nieve tapa tragaluces, orillas y base débil. No suba. Anote lo que pueda desde el suelo y vuelva."
        }
        CautionLabel::C2Line => "Hielo, nieve o mojado: no suba.",
        CautionLabel::C3Whole => {
            "Dé por hecho que todo cable tiene corriente, también el de luz a la casa. Usted, la escalera y la cinta, bien lejos: diez pies es un mínimo común, más con más voltaje. Si no se puede, llame antes a la compañía de luz."
        }
        CautionLabel::C3Line => "Dé por hecho que todo cable tiene corriente y quédese lejos.",
        CautionLabel::C4Whole => {
            "Las reglas contra caídas en techos suelen empezar a los seis pies y aquí pueden ser más estrictas. Siga la regla local y el plan de su compañía. Si no está entrenado o amarrado, quédese abajo."
        }
        CautionLabel::C4Line => "Sin entrenamiento o sin amarre: quédese abajo.",
        CautionLabel::C5Whole => {
            "Pie firme, más o menos uno afuera por cuatro de alto, amarrada o sostenida, largueros más arriba de la orilla, tres puntos de contacto. Teléfono en la bolsa. Mida, tome la foto, baje, luego escriba."
        }
        CautionLabel::C5Line => {
            "Escalera: firme, uno afuera por cuatro de alto, amarrada o sostenida."
        }
        CautionLabel::C6Whole => {
            "Avise a alguien dónde está y cuándo va a llamar. Este teléfono no puede mandar sin señal."
        }
        CautionLabel::C6Line => "Estoy solo: avise a alguien dónde está y cuándo va a llamar.",
        CautionLabel::C7Whole => {
            "Casa de antes de 1978 o de edad no sabida: donde se corta o raspa pintura puede haber reglas por plomo. Averigüe antes de cotizar o tocar pintura. Fieltro, loseta o forro viejos pueden tener asbesto: no los rompa para ver. Llame a alguien con licencia."
        }
        CautionLabel::C7Line => {
            "Pintura, fieltro, loseta o forro viejos: averigüe las reglas antes de tocarlos."
        }
        CautionLabel::C8Whole => {
            "Levante solo con permiso y solo donde vuelva a sellar. El shingle frío se quiebra. Una orilla no prueba toda la base."
        }
        CautionLabel::C8Line => "Levante solo donde vuelva a sellar.",
        CautionLabel::C9Whole => {
            "Esta carpeta dice lo que se vio y se midió. La cobertura y el reclamo son cosa de la aseguradora y, donde lo pide la ley, de gente con licencia."
        }
        CautionLabel::C9Line => "Cobertura y reclamos: la aseguradora y gente con licencia.",
        CautionLabel::C10Whole => {
            "Si la madera está pandeada, rajada o blanda, si el techo va a pesar más o se va a apilar carga, que la revise antes una persona calificada; estas medidas no lo dicen."
        }
        CautionLabel::C10Line => {
            "Estructura y cargas: que las revise una persona calificada; estas medidas no lo dicen."
        }
        CautionLabel::C11Whole => {
            "Notas que alguien leyó en la fecha indicada. Decide la oficina de permisos."
        }
        CautionLabel::C11Line => "Decide la oficina de permisos.",
        CautionLabel::C12Whole => {
            "Los fabricantes suelen dar el teléfono hasta el punto de congelación; más abajo puede apagarse sin aviso. Caliéntelo contra el cuerpo. Todas las teclas hasta ahora están guardadas."
        }
        CautionLabel::C12Line => {
            "Bajo cero el teléfono puede apagarse sin aviso. Todas las teclas hasta ahora están guardadas."
        }
    }
}
