use super::OrderMessage;
use crate::{Es, Format};

pub(super) fn text(message: &OrderMessage, f: &Es) -> String {
    match message {
        OrderMessage::NeededAndSpare => "Hace falta es lo que pide el techo. Sobrante es lo que queda de bultos, tramos, rollos y hojas completos. Lo que no se abre se devuelve.".to_owned(),
        OrderMessage::NoQuantities => "Todavía no hay cantidades: hace falta que cierre el contorno y una pendiente para cada agua. Vea la lista de lo que no se sabe.".to_owned(),
        OrderMessage::TearOff { pounds, low_pounds, high_pounds, loads, low_loads, high_loads, plan_for } => format!("Lo que se quita pesa como {} lb, 8 de cada 10 veces entre {} y {} lb: son {} de una carga llena, 8 de cada 10 veces entre {} y {}. Cuenten con {}. Pesen la primera: manda el límite del transportista.", f.number(*pounds, 0), f.number(*low_pounds, 0), f.number(*high_pounds, 0), f.number(*loads, 1), f.number(*low_loads, 1), f.number(*high_loads, 1), f.count(*plan_for)),
    }
}
