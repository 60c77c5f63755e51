//! Which entries are in force.
//!
//! An entry is in force unless an entry in force supersedes it. So a strike takes a reading out of
//! use, an undo of the strike lets it stand again, and a redo takes the undo back. Two corrections
//! made at once supersede the same entry, not each other: both are in force until something
//! supersedes both. No clock is asked.

use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

/// What stands and what does not.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Heads {
    /// Entries in force.
    pub in_force: BTreeSet<Uuid>,
    /// For an entry out of use: the entries in force that supersede it.
    pub out_by: BTreeMap<Uuid, BTreeSet<Uuid>>,
    /// Entries that supersede themselves or each other in a circle: those links are ignored.
    pub circular: BTreeSet<Uuid>,
    /// Entries that are superseded but have not come yet.
    pub awaited: BTreeSet<Uuid>,
}

/// Tells what is in force from each entry's list of what it supersedes.
pub fn heads(supersedes: &BTreeMap<Uuid, &[Uuid]>) -> Heads {
    let ids: Vec<Uuid> = supersedes.keys().copied().collect();
    let place: BTreeMap<Uuid, usize> = ids.iter().enumerate().map(|(i, id)| (*id, i)).collect();
    let mut told = Heads::default();
    let mut below: Vec<Vec<usize>> = Vec::with_capacity(ids.len());
    for named in supersedes.values() {
        let mut known = Vec::new();
        for id in *named {
            match place.get(id) {
                Some(i) => known.push(*i),
                None => {
                    told.awaited.insert(*id);
                }
            }
        }
        below.push(known);
    }

    // Within one ring every link runs in a circle, so none of them counts: which one was "the
    // wrong one" cannot be told, and any choice among them would depend on order.
    let rings = rings(&below);
    let mut order: Vec<usize> = (0..ids.len()).collect();
    order.sort_by_key(|i| std::cmp::Reverse(rings[*i]));
    let mut out_by: Vec<BTreeSet<Uuid>> = vec![BTreeSet::new(); ids.len()];
    for upper in order {
        let stands = out_by[upper].is_empty();
        if stands {
            told.in_force.insert(ids[upper]);
        }
        for &lower in &below[upper] {
            if rings[lower] == rings[upper] {
                told.circular.insert(ids[upper]);
            } else if stands {
                out_by[lower].insert(ids[upper]);
            }
        }
    }
    told.out_by = ids
        .into_iter()
        .zip(out_by)
        .filter(|(_, by)| !by.is_empty())
        .collect();
    told
}

/// The ring (strongly connected component) of each node, numbered so that a link leads to a lower
/// number or stays in its ring. Tarjan 1972, with a stack of its own: chains of undo may be long.
fn rings(below: &[Vec<usize>]) -> Vec<usize> {
    const UNSEEN: usize = usize::MAX;
    let n = below.len();
    let mut ring = vec![UNSEEN; n];
    let mut seen_at = vec![UNSEEN; n];
    let mut lowest = vec![0; n];
    let mut open: Vec<usize> = Vec::new();
    let (mut clock, mut count) = (0, 0);
    for root in 0..n {
        if seen_at[root] != UNSEEN {
            continue;
        }
        let mut path: Vec<(usize, usize)> = vec![(root, 0)];
        while let Some((node, next)) = path.pop() {
            if next == 0 {
                seen_at[node] = clock;
                lowest[node] = clock;
                clock += 1;
                open.push(node);
            } else {
                let child = below[node][next - 1];
                if ring[child] == UNSEEN {
                    lowest[node] = lowest[node].min(lowest[child]);
                }
            }
            if let Some(&child) = below[node].get(next) {
                path.push((node, next + 1));
                if seen_at[child] == UNSEEN {
                    path.push((child, 0));
                }
            } else if lowest[node] == seen_at[node] {
                while let Some(member) = open.pop() {
                    ring[member] = count;
                    if member == node {
                        break;
                    }
                }
                count += 1;
            }
        }
    }
    ring
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn told(links: &[(u8, &[u8])]) -> Heads {
        let id = |n: u8| Uuid::from_u128(u128::from(n));
        let named: Vec<(Uuid, Vec<Uuid>)> = links
            .iter()
            .map(|(upper, lower)| (id(*upper), lower.iter().map(|n| id(*n)).collect()))
            .collect();
        heads(
            &named
                .iter()
                .map(|(upper, lower)| (*upper, lower.as_slice()))
                .collect(),
        )
    }

    fn numbers(ids: &BTreeSet<Uuid>) -> Vec<u128> {
        ids.iter().map(Uuid::as_u128).collect()
    }

    #[test]
    fn a_strike_takes_a_reading_out_and_an_undo_lets_it_stand_again() {
        assert_eq!(numbers(&told(&[(1, &[])]).in_force), [1]);
        assert_eq!(numbers(&told(&[(1, &[]), (2, &[1])]).in_force), [2]);
        assert_eq!(
            numbers(&told(&[(1, &[]), (2, &[1]), (3, &[2])]).in_force),
            [1, 3]
        );
        let redone = told(&[(1, &[]), (2, &[1]), (3, &[2]), (4, &[3])]);
        assert_eq!(numbers(&redone.in_force), [2, 4]);
        assert_eq!(numbers(&redone.out_by[&Uuid::from_u128(1)]), [2]);
    }

    #[test]
    fn two_corrections_at_once_both_stand_until_one_entry_supersedes_both() {
        assert_eq!(
            numbers(&told(&[(1, &[]), (2, &[1]), (3, &[1])]).in_force),
            [2, 3]
        );
        let settled = told(&[(1, &[]), (2, &[1]), (3, &[1]), (4, &[2, 3, 1])]);
        assert_eq!(numbers(&settled.in_force), [4]);
    }

    #[test]
    fn a_circle_and_a_self_reference_are_ignored_and_flagged() {
        let own = told(&[(1, &[1])]);
        assert_eq!(
            (numbers(&own.in_force), numbers(&own.circular)),
            (vec![1], vec![1])
        );
        let circle = told(&[(1, &[2]), (2, &[3]), (3, &[1]), (4, &[1]), (5, &[])]);
        assert_eq!(numbers(&circle.in_force), [2, 3, 4, 5]);
        assert_eq!(numbers(&circle.circular), [1, 2, 3]);
    }

    #[test]
    fn a_link_out_of_a_circle_still_counts() {
        let circle = told(&[(1, &[2]), (2, &[1, 3]), (3, &[])]);
        assert_eq!(numbers(&circle.in_force), [1, 2]);
        assert_eq!(numbers(&circle.circular), [1, 2]);
    }

    #[test]
    fn what_has_not_come_yet_is_awaited() {
        let early = told(&[(2, &[1])]);
        assert_eq!(
            (numbers(&early.in_force), numbers(&early.awaited)),
            (vec![2], vec![1])
        );
    }

    #[test]
    fn a_chain_of_a_hundred_thousand_undos_is_followed_to_its_end() {
        let ids: Vec<Uuid> = (0..100_001).map(Uuid::from_u128).collect();
        let links = ids
            .iter()
            .enumerate()
            .map(|(i, id)| (*id, &ids[i.saturating_sub(1)..i]));
        let told = heads(&links.collect());
        assert!(told.in_force.contains(&ids[0]) && told.in_force.len() == 50_001);
    }

    proptest! {
        /// The rule itself, read off the answer: whatever the links, rings left out.
        #[test]
        fn an_entry_stands_exactly_when_nothing_standing_supersedes_it(
            links in prop::collection::vec(prop::collection::vec(0u8..14, 0..4), 12),
        ) {
            let named: Vec<(u8, &[u8])> =
                links.iter().enumerate().map(|(i, l)| (i as u8, l.as_slice())).collect();
            let told = told(&named);
            for lower in 0u8..12 {
                let id = Uuid::from_u128(u128::from(lower));
                let by: BTreeSet<Uuid> = named
                    .iter()
                    .filter(|(upper, list)| {
                        list.contains(&lower) && !(reaches(&links, lower, *upper))
                    })
                    .map(|(upper, _)| Uuid::from_u128(u128::from(*upper)))
                    .filter(|upper| told.in_force.contains(upper))
                    .collect();
                prop_assert_eq!(told.in_force.contains(&id), by.is_empty());
                prop_assert_eq!(told.out_by.get(&id).cloned().unwrap_or_default(), by);
            }
        }
    }

    /// Whether links lead from one entry to another, or are the same.
    fn reaches(links: &[Vec<u8>], from: u8, to: u8) -> bool {
        let mut seen = BTreeSet::from([from]);
        let mut todo = vec![from];
        while let Some(node) = todo.pop() {
            if node == to {
                return true;
            }
            for next in links.get(usize::from(node)).into_iter().flatten() {
                if seen.insert(*next) {
                    todo.push(*next);
                }
            }
        }
        false
    }
}
