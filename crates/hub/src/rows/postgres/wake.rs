//! Hubs that share a database tell each other of new entries. That only wakes who waits: what a
//! telling misses, the end of the wait finds.

use crate::rows::wakes::Wakes;
use std::collections::BTreeSet;
use std::sync::Arc;
use std::task::Poll;
use std::time::Duration;
use tokio::sync::mpsc::{UnboundedReceiver, unbounded_channel};
use tokio_postgres::tls::{MakeTlsConnect, TlsConnect};
use tokio_postgres::{AsyncMessage, Client, Config, Connection, Socket};

const CHANNEL: &str = "eavebook_hub";
/// Tellings are gathered for so long: one at a time is told in a cluster.
const GATHER: Duration = Duration::from_millis(20);
/// Companies in one telling: it may hold 8000 bytes.
const AT_ONCE: usize = 300;
/// After a connection was lost.
const PAUSE: Duration = Duration::from_secs(1);

/// Hears other hubs, and tells them of `news`, until the hub ends.
pub(super) async fn listen<T>(
    to: Config,
    tls: T,
    wakes: Arc<Wakes>,
    mut news: UnboundedReceiver<i64>,
) where
    T: MakeTlsConnect<Socket> + Clone + Send + 'static,
    T::Stream: Send + 'static,
    T::TlsConnect: Send,
    <T::TlsConnect as TlsConnect<Socket>>::Future: Send,
{
    loop {
        if let Ok((client, connection)) = to.connect(tls.clone()).await {
            let (hear, mut heard) = unbounded_channel();
            // Ends with the client or the connection.
            tokio::spawn(drive(connection, hear));
            if client
                .batch_execute(&format!("LISTEN {CHANNEL}"))
                .await
                .is_ok()
            {
                // What came while nobody listened.
                wakes.wake_all();
                loop {
                    tokio::select! {
                        message = heard.recv() => match message {
                            Some(companies) => wake(&wakes, &companies),
                            None => break,
                        },
                        company = news.recv() => {
                            let Some(company) = company else {
                                return;
                            };
                            tokio::time::sleep(GATHER).await;
                            let mut companies = BTreeSet::from([company]);
                            while companies.len() < AT_ONCE
                                && let Ok(more) = news.try_recv()
                            {
                                companies.insert(more);
                            }
                            if tell(&client, &companies).await.is_err() {
                                break;
                            }
                        }
                    }
                }
            }
        }
        tokio::time::sleep(PAUSE).await;
        if news.is_closed() {
            return;
        }
    }
}

async fn tell(client: &Client, companies: &BTreeSet<i64>) -> Result<(), tokio_postgres::Error> {
    let named: Vec<String> = companies.iter().map(ToString::to_string).collect();
    client
        .execute(
            "SELECT pg_notify($1, $2)",
            &[&CHANNEL, &named.join(",").as_str()],
        )
        .await
        .map(drop)
}

fn wake(wakes: &Wakes, companies: &str) {
    for company in companies.split(',') {
        if let Ok(company) = company.parse() {
            wakes.wake(company);
        }
    }
}

async fn drive<S>(
    mut connection: Connection<Socket, S>,
    hear: tokio::sync::mpsc::UnboundedSender<String>,
) where
    S: tokio::io::AsyncRead + tokio::io::AsyncWrite + Unpin,
{
    std::future::poll_fn(|context| {
        loop {
            match connection.poll_message(context) {
                Poll::Pending => return Poll::Pending,
                Poll::Ready(Some(Ok(message))) => {
                    if let AsyncMessage::Notification(notification) = message {
                        // Nobody hears when the hub ends.
                        let _ = hear.send(notification.payload().to_owned());
                    }
                }
                Poll::Ready(Some(Err(_)) | None) => return Poll::Ready(()),
            }
        }
    })
    .await;
}
