messages! {
    /// The usual cautions of roof work, as papers print them.
    SafetyMessage, "safety";
    /// Before anybody climbs. Source: OSHA 29 CFR 1926.501(b)(13).
    Climbing;
    /// Ice, snow, frost.
    Ice;
    /// Power lines. Source: OSHA hazard alert on roofs under snow (ten feet).
    Wires;
    /// Weight and weak framing.
    Structure;
    /// Old paint, old felt. Source: EPA rule on lead in renovation.
    LeadAndAsbestos;
    /// Notes of a code profile are no law.
    CodeNotes;
    /// Building rules, on a proposal.
    PermitOffice;
    /// Cover and claims.
    Insurance;
}
