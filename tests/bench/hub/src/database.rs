//! Devices push to a hub over PostgreSQL, beside as many hands that insert the same rows there by a
//! sequence: what a hub would do that need not number without a gap.

use crate::yard::{Device, Yard, together};
use crate::{Done, rate, row, timed};
use eavebook_core::book::entry::Entry;
use eavebook_hub::Transport;
use std::error::Error;
use std::time::Duration;
use tokio_postgres::{Client, NoTls};
use uuid::Uuid;

const HANDS: usize = 8;
const ROUNDS: usize = 4;
const CALLS: usize = 10;
const ENTRIES: usize = 50;
const JOB: Uuid = Uuid::from_u128(0xb);

/// Where `cargo xtask stores` says that the database is, if it does.
pub fn named() -> Option<String> {
    std::env::var("EAVEBOOK_TEST_POSTGRES").ok()
}

/// Tables of their own: how to reach them.
pub fn schema(to: &str) -> Result<String, Box<dyn Error>> {
    let name = format!("y{}", Uuid::new_v4().simple());
    let mut hand = Hand::new(to)?;
    hand.run(&format!("CREATE SCHEMA {name}"))?;
    Ok(format!("{to} options='-c search_path={name}'"))
}

/// One connection.
pub struct Hand {
    runtime: tokio::runtime::Runtime,
    client: Client,
}

impl Hand {
    pub fn new(to: &str) -> Result<Hand, Box<dyn Error>> {
        let runtime = tokio::runtime::Builder::new_current_thread()
            .enable_all()
            .build()?;
        let client = runtime.block_on(async {
            let (client, connection) = tokio_postgres::connect(to, NoTls).await?;
            tokio::spawn(connection);
            Ok::<_, tokio_postgres::Error>(client)
        })?;
        Ok(Hand { runtime, client })
    }

    pub fn run(&mut self, sql: &str) -> Result<(), Box<dyn Error>> {
        Ok(self.runtime.block_on(self.client.batch_execute(sql))?)
    }

    pub fn number(&mut self, sql: &str) -> Result<i64, Box<dyn Error>> {
        Ok(self
            .runtime
            .block_on(self.client.query_one(sql, &[]))?
            .try_get(0)?)
    }

    fn insert(&mut self, rows: &[Entry]) -> Result<(), tokio_postgres::Error> {
        let texts: Vec<Vec<u8>> = rows.iter().map(|one| one.to_json().into_bytes()).collect();
        let ids: Vec<Uuid> = rows.iter().map(|one| one.id).collect();
        let books: Vec<Uuid> = rows.iter().map(|one| one.book).collect();
        self.runtime.block_on(async {
            let sql = "INSERT INTO said (id, book, entry)
                       SELECT * FROM unnest($1::uuid[], $2::uuid[], $3::bytea[])";
            let asks: [&(dyn tokio_postgres::types::ToSql + Sync); 3] = [&ids, &books, &texts];
            self.client.execute(sql, &asks).await.map(drop)
        })
    }
}

pub fn run() -> Done {
    let Some(to) = named() else {
        println!("PostgreSQL is not here: run this by `cargo xtask bench`");
        return Ok(());
    };
    for (companies, goal) in [(1, 0.4), (HANDS, 0.8)] {
        let toml = format!(
            "[postgres]\nconnect = \"{}\"\nconnections = 16\n",
            schema(&to)?
        );
        let yard = Yard::new(Transport::Plain, Some(&toml))?;
        let mut devices: Vec<Device> = (0..HANDS)
            .map(|n| yard.device(&format!("Ridge {}", n % companies)))
            .collect::<Result<_, _>>()?;
        let peer = schema(&to)?;
        let mut hands: Vec<Hand> = (0..HANDS)
            .map(|_| Hand::new(&peer))
            .collect::<Result<_, _>>()?;
        hands[0].run(
            "CREATE TABLE said (seq BIGSERIAL UNIQUE, id UUID PRIMARY KEY, book UUID NOT NULL,
                                entry BYTEA NOT NULL);
             CREATE INDEX of_a_book ON said (book)",
        )?;
        let [mut ours, mut theirs] = [Duration::ZERO; 2];
        // The first round opens connections, on both sides, and is not timed.
        for round in 0..=ROUNDS {
            let mut say = || -> Vec<Vec<Vec<Entry>>> {
                devices
                    .iter_mut()
                    .map(|device| (0..CALLS).map(|_| device.book(JOB, ENTRIES)).collect())
                    .collect()
            };
            let (said, same) = (say(), say());
            let our = timed(|| {
                together(&mut devices, |n, device| {
                    said[n].iter().try_for_each(|call| device.push(call))
                })
            })?;
            let their = timed(|| {
                together(&mut hands, |n, hand| {
                    Ok(same[n].iter().try_for_each(|call| hand.insert(call))?)
                })
            })?;
            if round > 0 {
                ours += our;
                theirs += their;
            }
        }
        let rates = [ours, theirs].map(|took| rate(ROUNDS * HANDS * CALLS * ENTRIES, took));
        let name = format!("hub, PostgreSQL, 50 entries a call, companies: {companies}");
        row(&name, rates, "per s", goal);
        drop(devices);
        yard.hub.stop();
    }
    Ok(())
}
