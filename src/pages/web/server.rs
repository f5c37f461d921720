//! Binds the server to loopback and runs it on a thread of its own.

use std::net::{Ipv4Addr, SocketAddr, TcpListener};
use std::sync::Arc;
use std::thread::JoinHandle;
use std::time::Duration;

use axum::extract::DefaultBodyLimit;
use axum::http::StatusCode;
use axum::routing::get;
use axum::{Extension, Router};
use hyper_util::rt::{TokioExecutor, TokioIo, TokioTimer};
use hyper_util::server::conn::auto::Builder;
use hyper_util::service::TowerToHyperService;
use tokio::sync::{Semaphore, oneshot};

use super::assets;
use super::guard::{BODY_LIMIT_BYTES, Guard, guard};
use super::peer::Peer;

/// After a failure to accept, which comes where too many files are open.
const RECOVER: Duration = Duration::from_millis(200);

/// What one server bears. Anybody on this computer can connect to it, with the key or without.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// Connections at once; more wait to be taken.
    pub connections: usize,
    /// Until the head of a request has come whole; also how long a connection may be idle.
    pub head: Duration,
    /// Until the body has come whole.
    pub body: Duration,
}

impl Default for Limits {
    /// On one computer a request comes in milliseconds. A browser opens six connections to a page.
    fn default() -> Self {
        Self { connections: 128, head: Duration::from_secs(5), body: Duration::from_secs(10) }
    }
}

/// Why there are no pages.
#[derive(Debug, thiserror::Error)]
pub enum WebError {
    #[error(
        "the pages cannot be served on port {port}: {cause}. Close the program that uses it, or leave --screen-port out to use any free port"
    )]
    Bind { port: u16, cause: std::io::Error },
    #[error("the pages cannot be served: {cause}. Close other programs and try again, or go on without --screen")]
    Start { cause: String },
}

/// A running server. Dropping it ends it, open pages included.
#[derive(Debug)]
pub struct Server {
    port: u16,
    guard: Arc<Guard>,
    stop: Option<oneshot::Sender<()>>,
    thread: Option<JoinHandle<()>>,
}

impl Server {
    /// Serves the routes on 127.0.0.1; port 0 takes any free one. `routes` gets the guard, for the numbers that are good once.
    ///
    /// # Errors
    /// The port is taken, or the system refuses threads or random numbers.
    pub fn start(port: u16, routes: impl FnOnce(Arc<Guard>) -> Router) -> Result<Self, WebError> {
        Self::start_within(Limits::default(), port, routes)
    }

    /// As [`Server::start`], with other limits.
    ///
    /// # Errors
    /// As [`Server::start`].
    pub fn start_within(limits: Limits, port: u16, routes: impl FnOnce(Arc<Guard>) -> Router) -> Result<Self, WebError> {
        let refused = |cause| WebError::Bind { port, cause };
        let listener = TcpListener::bind(SocketAddr::from((Ipv4Addr::LOCALHOST, port))).map_err(refused)?;
        listener.set_nonblocking(true).map_err(refused)?;
        let port = listener.local_addr().map_err(refused)?.port();
        let start = |cause: String| WebError::Start { cause };
        let own = Arc::new(Guard::new(port, limits.body).map_err(|cause| start(cause.to_string()))?);
        let routes = routes(own.clone())
            .route("/assets/{name}", get(assets::asset))
            .fallback(|| async { (StatusCode::NOT_FOUND, "There is no such page.") })
            .layer(DefaultBodyLimit::max(BODY_LIMIT_BYTES))
            .layer(axum::middleware::from_fn_with_state(own.clone(), guard));
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().map_err(|cause| start(cause.to_string()))?;
        let (stop, stopped) = oneshot::channel();
        let serve = move || {
            runtime.block_on(async move {
                let Ok(listener) = tokio::net::TcpListener::from_std(listener) else { return };
                // An open page never lets go by itself, so it is not waited for.
                tokio::select! {
                    () = serve_all(listener, routes, limits) => {}
                    _ = stopped => {}
                }
            });
        };
        let thread = std::thread::Builder::new().name("pages".into()).spawn(serve).map_err(|cause| start(cause.to_string()))?;
        Ok(Self { port, guard: own, stop: Some(stop), thread: Some(thread) })
    }

    /// Where to open the pages; it holds the key of this start. It is for the screen alone: what stands on a command line, every user of the
    /// computer can read.
    #[must_use]
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}/enter?key={}", self.port, self.guard.key())
    }

    /// Where a browser is sent by a command. It holds no key, but a ticket that lets in once, soon, and this user alone.
    #[must_use]
    pub fn address_for_browser(&self) -> String {
        format!("http://127.0.0.1:{}/enter?ticket={}", self.port, self.guard.ticket())
    }

    /// The port that was taken.
    #[must_use]
    pub fn port(&self) -> u16 {
        self.port
    }
}

/// Takes every connection, within the limits.
async fn serve_all(listener: tokio::net::TcpListener, routes: Router, limits: Limits) {
    let room = Arc::new(Semaphore::new(limits.connections));
    // The room is there for as long as this runs.
    while let Ok(place) = room.clone().acquire_owned().await {
        let (stream, peer) = match listener.accept().await {
            Ok(taken) => taken,
            Err(why) => {
                tracing::warn!("a page could not connect: {why}");
                tokio::time::sleep(RECOVER).await;
                continue;
            }
        };
        let service = TowerToHyperService::new(routes.clone().layer(Extension(Peer(peer))));
        tokio::spawn(async move {
            let mut server = Builder::new(TokioExecutor::new()).http1_only();
            server.http1().timer(TokioTimer::new()).header_read_timeout(limits.head);
            if let Err(why) = server.serve_connection(TokioIo::new(stream), service).await {
                tracing::debug!("a page's connection has ended: {why}");
            }
            drop(place);
        });
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        if let Some(stop) = self.stop.take() {
            let _ = stop.send(());
        }
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}
