//! Rows out of the database into a file of [`sqlite`](crate::rows::sqlite), and back: a backup is the
//! same file whichever store it was made of, and may be restored into the other.

use super::{Postgres, QueryError};
use crate::problem::Problem;
use deadpool_postgres::Transaction;
use futures_util::TryStreamExt;
use futures_util::future::try_join_all;
use rusqlite::Connection;
use rusqlite::types::Value;
use std::pin::pin;
use tokio_postgres::Row;
use tokio_postgres::types::ToSql;

/// What a column holds, as both stores see it.
#[derive(Clone, Copy)]
enum Kind {
    Text,
    Number,
    Bytes,
    /// Text there, a UUID here.
    Uuid,
    /// A number there, a truth here.
    Truth,
}

struct Table {
    name: &'static str,
    columns: &'static [(&'static str, Kind)],
}

/// All but `hub`, which is one row, and `codes`: a code is not brought back.
const TABLES: [Table; 5] = [
    Table {
        name: "companies",
        columns: &[
            ("id", Kind::Number),
            ("name", Kind::Text),
            ("seq", Kind::Number),
            ("count", Kind::Number),
            ("sum", Kind::Text),
        ],
    },
    Table {
        name: "devices",
        columns: &[
            ("company", Kind::Number),
            ("device", Kind::Uuid),
            ("name", Kind::Text),
            ("author", Kind::Text),
            ("paired", Kind::Text),
            ("token_id", Kind::Text),
            ("token_sha256", Kind::Bytes),
            ("revoked", Kind::Text),
            ("duplicate", Kind::Truth),
        ],
    },
    Table {
        name: "entries",
        columns: &[
            ("company", Kind::Number),
            ("seq", Kind::Number),
            ("id", Kind::Uuid),
            ("book", Kind::Uuid),
            ("device", Kind::Uuid),
            ("incarnation", Kind::Uuid),
            ("dseq", Kind::Number),
            ("sha256", Kind::Text),
            ("entry", Kind::Bytes),
        ],
    },
    Table {
        name: "conflicts",
        columns: &[
            ("company", Kind::Number),
            ("id", Kind::Uuid),
            ("content", Kind::Bytes),
            ("entry", Kind::Bytes),
        ],
    },
    Table {
        name: "blobs",
        columns: &[
            ("company", Kind::Number),
            ("sha256", Kind::Text),
            ("size", Kind::Number),
        ],
    },
];

/// Rows that are sent before the first answer is waited for.
const AHEAD: usize = 200;

impl Table {
    fn names(&self) -> String {
        let names: Vec<&str> = self.columns.iter().map(|(name, _)| *name).collect();
        names.join(", ")
    }

    /// By its first columns, which are a key or come in the order of one.
    fn read_here(&self) -> String {
        let columns: Vec<String> = self
            .columns
            .iter()
            .map(|(name, kind)| match kind {
                Kind::Uuid => format!("{name}::text"),
                Kind::Truth => format!("{name}::int::bigint"),
                Kind::Text | Kind::Number | Kind::Bytes => (*name).to_owned(),
            })
            .collect();
        // Conflicts come in the order in which they came.
        let order = if self.name == "conflicts" {
            "row"
        } else {
            "1, 2"
        };
        format!(
            "SELECT {} FROM {} ORDER BY {order}",
            columns.join(", "),
            self.name
        )
    }

    fn write_there(&self) -> String {
        let places: Vec<String> = (1..=self.columns.len()).map(|n| format!("?{n}")).collect();
        format!(
            "INSERT INTO {} ({}) VALUES ({})",
            self.name,
            self.names(),
            places.join(", ")
        )
    }

    fn read_there(&self) -> String {
        format!("SELECT {} FROM {} ORDER BY rowid", self.names(), self.name)
            .replace("blobs ORDER BY rowid", "blobs ORDER BY 1, 2")
    }

    fn write_here(&self) -> String {
        let places: Vec<String> = self
            .columns
            .iter()
            .zip(1..)
            .map(|((_, kind), n)| match kind {
                Kind::Uuid => format!("${n}::text::uuid"),
                Kind::Truth => format!("${n}::bigint <> 0"),
                Kind::Text | Kind::Number | Kind::Bytes => format!("${n}"),
            })
            .collect();
        format!(
            "INSERT INTO {} ({}) VALUES ({})",
            self.name,
            self.names(),
            places.join(", ")
        )
    }
}

fn value(row: &Row, column: usize, kind: Kind) -> Result<Value, QueryError> {
    Ok(match kind {
        Kind::Text | Kind::Uuid => row
            .try_get::<_, Option<String>>(column)?
            .map_or(Value::Null, Value::Text),
        Kind::Number | Kind::Truth => Value::Integer(row.try_get(column)?),
        Kind::Bytes => Value::Blob(row.try_get(column)?),
    })
}

fn argument(value: Value) -> Box<dyn ToSql + Sync + Send> {
    match value {
        Value::Null => Box::new(None::<String>),
        Value::Integer(number) => Box::new(number),
        Value::Real(number) => Box::new(number),
        Value::Text(text) => Box::new(text),
        Value::Blob(bytes) => Box::new(bytes),
    }
}

impl Postgres {
    /// Copies all rows of one moment into a file that has the tables and no row.
    pub(super) fn copy_into(&self, file: &mut Connection) -> Result<(), Problem> {
        self.wait(async {
            let mut client = self.client().await?;
            let look = client
                .build_transaction()
                .isolation_level(tokio_postgres::IsolationLevel::RepeatableRead)
                .read_only(true)
                .start()
                .await?;
            look.batch_execute("SET LOCAL statement_timeout = 0")
                .await?;
            let into = file.transaction().map_err(Problem::from)?;
            let row = look.query_one("SELECT hub_id, epoch FROM hub", &[]).await?;
            let (hub_id, epoch): (String, String) = (row.try_get(0)?, row.try_get(1)?);
            into.execute("UPDATE hub SET hub_id = ?1, epoch = ?2", (hub_id, epoch))
                .map_err(Problem::from)?;
            for table in TABLES {
                let mut write = into.prepare(&table.write_there()).map_err(Problem::from)?;
                let nothing: [&(dyn ToSql + Sync); 0] = [];
                let mut rows = pin!(look.query_raw(&table.read_here(), nothing).await?);
                while let Some(row) = rows.try_next().await? {
                    let values = table
                        .columns
                        .iter()
                        .enumerate()
                        .map(|(column, (_, kind))| value(&row, column, *kind))
                        .collect::<Result<Vec<Value>, QueryError>>()?;
                    write
                        .execute(rusqlite::params_from_iter(values))
                        .map_err(Problem::from)?;
                }
            }
            into.commit().map_err(Problem::from)?;
            Ok(())
        })
    }

    /// Brings all rows of a file into a database that has no company yet.
    pub(crate) fn bring(&self, file: &Connection) -> Result<(), Problem> {
        self.wait(async {
            let mut client = self.client().await?;
            let change = client.transaction().await?;
            change
                .batch_execute("LOCK TABLE companies IN EXCLUSIVE MODE")
                .await?;
            let found = change.query_one("SELECT count(*) FROM companies", &[]);
            if found.await?.try_get::<_, i64>(0)? > 0 {
                let why = "the database of hub.toml holds a hub already: name an empty one, so \
                           that nothing is written over";
                return Err(Problem::new(crate::problem::Code::Unavailable, why).into());
            }
            let (hub_id, epoch): (String, String) = file
                .query_row("SELECT hub_id, epoch FROM hub", [], |row| {
                    Ok((row.get(0)?, row.get(1)?))
                })
                .map_err(Problem::from)?;
            let sql = "UPDATE hub SET hub_id = $1, epoch = $2, url = NULL";
            change.execute(sql, &[&hub_id, &epoch]).await?;
            for table in TABLES {
                bring_table(&change, file, &table).await?;
            }
            let next = "SELECT setval(pg_get_serial_sequence('companies', 'id'),
                                      (SELECT coalesce(max(id), 0) + 1 FROM companies), FALSE)";
            change.execute(next, &[]).await?;
            change.commit().await?;
            Ok(())
        })
    }
}

async fn bring_table(
    change: &Transaction<'_>,
    file: &Connection,
    table: &Table,
) -> Result<(), QueryError> {
    let write = change.prepare(&table.write_here()).await?;
    let mut read = file.prepare(&table.read_there()).map_err(Problem::from)?;
    let mut rows = read.query([]).map_err(Problem::from)?;
    let mut more = true;
    while more {
        let mut ahead = Vec::new();
        while ahead.len() < AHEAD {
            let Some(row) = rows.next().map_err(Problem::from)? else {
                more = false;
                break;
            };
            let values = (0..table.columns.len())
                .map(|column| Ok(argument(row.get(column)?)))
                .collect::<rusqlite::Result<Vec<_>>>()
                .map_err(Problem::from)?;
            ahead.push(values);
        }
        try_join_all(ahead.iter().map(|values| {
            change.execute_raw(
                &write,
                values.iter().map(|one| one.as_ref() as &(dyn ToSql + Sync)),
            )
        }))
        .await?;
    }
    Ok(())
}
