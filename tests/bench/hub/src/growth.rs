//! What a company, a job and a photo cost a hub; whether many companies make one slower; and what
//! that comes to at 10, 1,000 and 100,000 of them.
//!
//! Costs are measured here, on real tables with real entries. How much a firm books is assumed, and
//! said: the assumptions are at the top.

use crate::Done;
use crate::database::{Hand, named, schema};
use crate::yard::{Device, Yard, entry};
use eavebook_core::book::entry::Entry;
use eavebook_hub::Transport;
use eavebook_sync::Method;
use rusqlite::Connection;
use std::error::Error;
use std::time::Instant;
use uuid::Uuid;

/// Jobs of a company in a year.
const JOBS: f64 = 200.0;
/// Entries of a job.
const ENTRIES: f64 = 250.0;
/// Photos of a job.
const PHOTOS: f64 = 40.0;
/// Mebibytes of a photo.
const PHOTO: f64 = 3.0;
/// Share of a year's entries that come in its busiest hour: 200 days of 8 hours, five times the mean.
const BUSIEST: f64 = 5.0 / (200.0 * 8.0);

/// Companies that a hub is asked among.
const COMPANIES: [u32; 3] = [10, 1000, 100_000];
/// Entries of each of those that only stand there.
const STANDING: u32 = 4;
/// Entries whose cost is measured.
const MEASURED: usize = 20_000;

/// The tables of a hub, filled and measured from beside it.
trait Tables {
    fn run(&mut self, sql: &str) -> Result<(), Box<dyn Error>>;
    /// Bytes on disk.
    fn bytes(&mut self) -> Result<f64, Box<dyn Error>>;
    /// An SQL that yields the numbers from one to another as `n`.
    fn numbers(&self, from: u32, to: u32) -> String;
    /// An SQL of a UUID made of the number `n` and a word.
    fn uuid(&self, word: u32) -> String;
    fn bytes_of(&self, text: &str) -> String;
}

struct File(Connection);

impl Tables for File {
    fn run(&mut self, sql: &str) -> Result<(), Box<dyn Error>> {
        Ok(self.0.execute_batch(sql)?)
    }

    fn bytes(&mut self) -> Result<f64, Box<dyn Error>> {
        let ask = |sql| self.0.query_row(sql, [], |row| row.get::<_, f64>(0));
        let pages = ask("SELECT CAST(page_count AS REAL) FROM pragma_page_count")?;
        Ok(pages * ask("SELECT CAST(page_size AS REAL) FROM pragma_page_size")?)
    }

    fn numbers(&self, from: u32, to: u32) -> String {
        format!(
            "(WITH RECURSIVE r (n) AS (SELECT {from} UNION ALL SELECT n + 1 FROM r WHERE n < {to})
              SELECT n FROM r)"
        )
    }

    fn uuid(&self, word: u32) -> String {
        format!("printf('00000000-0000-7000-8000-%04x%08x', {word}, n)")
    }

    fn bytes_of(&self, text: &str) -> String {
        format!("CAST('{text}' AS BLOB)")
    }
}

struct Database(Hand);

impl Tables for Database {
    fn run(&mut self, sql: &str) -> Result<(), Box<dyn Error>> {
        self.0.run(sql)
    }

    fn bytes(&mut self) -> Result<f64, Box<dyn Error>> {
        let sql = "SELECT sum(pg_total_relation_size(c.oid))::bigint FROM pg_class c
                   WHERE relnamespace = current_schema()::regnamespace AND relkind = 'r'";
        Ok(self.0.number(sql)? as f64)
    }

    fn numbers(&self, from: u32, to: u32) -> String {
        format!("generate_series({from}, {to}) AS s (n)")
    }

    fn uuid(&self, word: u32) -> String {
        format!(
            "('00000000-0000-7000-8000-' || lpad(to_hex({word}), 4, '0') || lpad(to_hex(n), 8, '0'))::uuid"
        )
    }

    fn bytes_of(&self, text: &str) -> String {
        format!("convert_to('{text}', 'UTF8')")
    }
}

/// What was measured of one pair of stores.
struct Cost {
    entry: f64,
    company: f64,
    photo: f64,
    /// Entries that a hub takes a second, with so many companies beside.
    pushes: Vec<f64>,
}

pub fn run() -> Done {
    println!(
        "assumed of a company and year: {JOBS:.0} jobs, {ENTRIES:.0} entries and {PHOTOS:.0} photos"
    );
    println!(
        "of {PHOTO:.0} MiB a job; in the busiest hour five times the mean of 200 days of 8 hours\n"
    );
    let file = {
        let yard = Yard::new(Transport::Plain, None)?;
        let tables = File(Connection::open(yard.dir().join("hub.sqlite"))?);
        tables.0.busy_timeout(std::time::Duration::from_secs(60))?;
        measure("a file and a folder", yard, tables)?
    };
    table(&file);
    let Some(to) = named() else {
        println!("PostgreSQL is not here: `cargo xtask growth` begins it");
        return Ok(());
    };
    let own = schema(&to)?;
    let toml = format!("[postgres]\nconnect = \"{own}\"\n");
    let yard = Yard::new(Transport::Plain, Some(&toml))?;
    let database = measure("PostgreSQL", yard, Database(Hand::new(&own)?))?;
    table(&database);
    Ok(())
}

fn measure(name: &str, yard: Yard, mut tables: impl Tables) -> Result<Cost, Box<dyn Error>> {
    println!("{name}\n");
    let mut device = yard.device("Ridge")?;
    // Tables of no rows have pages already: the second part of what comes is measured.
    let push = |device: &mut Device, count: usize| -> Result<(), Box<dyn Error>> {
        for job in 0..count / 250 {
            let entries = device.book(Uuid::from_u128(job as u128 + 1), 250);
            device.push(&entries).map_err(|why| why.to_string())?;
        }
        Ok(())
    };
    push(&mut device, 2000)?;
    let before = tables.bytes()?;
    push(&mut device, MEASURED)?;
    let entry_cost = (tables.bytes()? - before) / MEASURED as f64;
    let text = entry(
        Uuid::from_u128(1),
        Uuid::from_u128(2),
        Uuid::from_u128(3),
        1,
    );
    println!(
        "  an entry        {entry_cost:>8.0} bytes on disk, its text is {}",
        text.to_json().len()
    );
    let before = tables.bytes()?;
    fill(&mut tables, 2, 10_001, 0)?;
    let company = (tables.bytes()? - before) / 10_000.0;
    println!("  a company       {company:>8.0} bytes, with four devices");
    let before = tables.bytes()?;
    let numbers = tables.numbers(1, 10_000);
    let hash = "substr('0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef', 1, 56)";
    let hash = match tables.bytes_of("").starts_with("CAST") {
        true => format!("{hash} || printf('%08x', n)"),
        false => format!("{hash} || lpad(to_hex(n), 8, '0')"),
    };
    tables.run(&format!(
        "INSERT INTO blobs (company, sha256, size) SELECT 1, {hash}, 3000000 FROM {numbers}"
    ))?;
    let photo = (tables.bytes()? - before) / 10_000.0;
    println!("  a photo         {photo:>8.0} bytes beside its own");
    let mut there = 10_001;
    // Those that were put there to be measured go; the one that books stays.
    let mut pushes = Vec::new();
    tables.run("DELETE FROM devices WHERE company > 1; DELETE FROM companies WHERE id > 1")?;
    there = there.min(1);
    for companies in COMPANIES {
        fill(&mut tables, there + 1, companies, STANDING)?;
        there = companies;
        let (calls, page) = ask(&mut device)?;
        println!(
            "  with {companies:>7} companies: {calls:>6.0} entries a second by one device, 50 a call; a page of \
             the feed {page:>5.1} ms"
        );
        pushes.push(calls);
    }
    println!();
    yard.hub.stop();
    Ok(Cost {
        entry: entry_cost,
        company,
        photo,
        pushes,
    })
}

/// Companies with four devices each, and so many entries, that only stand there.
fn fill(tables: &mut impl Tables, from: u32, to: u32, entries: u32) -> Done {
    let numbers = tables.numbers(from, to);
    let zeros = "0".repeat(64);
    tables.run(&format!(
        "INSERT INTO companies (id, name, seq, count, sum)
         SELECT n, 'standing ' || n, {entries}, {entries}, '{zeros}' FROM {numbers}"
    ))?;
    for device in 0..4 {
        let (id, hash) = (tables.uuid(device), tables.bytes_of(&zeros[..32]));
        tables.run(&format!(
            "INSERT INTO devices (company, device, name, author, paired, token_id, token_sha256)
             SELECT n, {id}, 'a phone', 'a walker', '2026-05-02T14:41:07.000Z',
                    'standing-{device}-' || n, {hash} FROM {numbers}"
        ))?;
    }
    let text: Entry = entry(
        Uuid::from_u128(1),
        Uuid::from_u128(2),
        Uuid::from_u128(3),
        1,
    );
    let text = tables.bytes_of(&text.to_json().replace('\'', "''"));
    for seq in 1..=entries {
        let (id, book) = (tables.uuid(seq + 100), tables.uuid(5));
        tables.run(&format!(
            "INSERT INTO entries (company, seq, id, book, device, incarnation, dseq, sha256, entry)
             SELECT n, {seq}, {id}, {book}, {book}, {book}, {seq}, '{zeros}', {text} FROM {numbers}"
        ))?;
    }
    Ok(())
}

/// Entries a second in calls of fifty, and milliseconds of a page of the feed from its beginning.
fn ask(device: &mut Device) -> Result<(f64, f64), Box<dyn Error>> {
    const CALLS: usize = 40;
    let calls: Vec<Vec<Entry>> = (0..CALLS)
        .map(|_| device.book(Uuid::from_u128(9), 50))
        .collect();
    let start = Instant::now();
    for call in &calls {
        device.push(call).map_err(|why| why.to_string())?;
    }
    let pushes = (CALLS * 50) as f64 / start.elapsed().as_secs_f64();
    let start = Instant::now();
    for _ in 0..CALLS {
        device
            .ask(Method::Get, "/v1/feed?limit=500", Vec::new())
            .map_err(|why| why.to_string())?;
    }
    Ok((
        pushes,
        start.elapsed().as_secs_f64() * 1000.0 / CALLS as f64,
    ))
}

/// What it comes to.
fn table(cost: &Cost) {
    println!(
        "  companies   rows a year  photos a year   entries a second in    share of one device's"
    );
    println!(
        "                                           the busiest hour       rate at a hub, above"
    );
    for (companies, pushes) in COMPANIES.iter().zip(&cost.pushes) {
        let many = f64::from(*companies);
        let rows = many * (cost.company + JOBS * (ENTRIES * cost.entry + PHOTOS * cost.photo));
        let photos = many * JOBS * PHOTOS * PHOTO / 1024.0;
        let peak = many * JOBS * ENTRIES * BUSIEST / 3600.0;
        println!(
            "  {companies:>9}  {:>8.2} GiB  {photos:>9.0} GiB  {peak:>17.2}  {:>22.3}",
            rows / f64::from(1 << 30),
            peak / pushes
        );
    }
    println!();
}
