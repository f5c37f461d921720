//! Binds the server to loopback and runs it on a thread of its own.

use std::net::{Ipv4Addr, SocketAddr, TcpListener};
use std::sync::Arc;
use std::thread::JoinHandle;

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::http::StatusCode;
use axum::routing::get;
use tokio::sync::oneshot;

use super::assets;
use super::guard::{BODY_LIMIT_BYTES, Guard, guard};

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
        let refused = |cause| WebError::Bind { port, cause };
        let listener = TcpListener::bind(SocketAddr::from((Ipv4Addr::LOCALHOST, port))).map_err(refused)?;
        listener.set_nonblocking(true).map_err(refused)?;
        let port = listener.local_addr().map_err(refused)?.port();
        let start = |cause: String| WebError::Start { cause };
        let own = Arc::new(Guard::new(port).map_err(|cause| start(cause.to_string()))?);
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
                    served = axum::serve(listener, routes) => {
                        if let Err(why) = served {
                            tracing::error!("the pages have ended: {why}");
                        }
                    }
                    _ = stopped => {}
                }
            });
        };
        let thread = std::thread::Builder::new().name("pages".into()).spawn(serve).map_err(|cause| start(cause.to_string()))?;
        Ok(Self { port, guard: own, stop: Some(stop), thread: Some(thread) })
    }

    /// Where to open the pages; it holds the key of this start.
    #[must_use]
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}/enter?key={}", self.port, self.guard.key())
    }

    /// The port that was taken.
    #[must_use]
    pub fn port(&self) -> u16 {
        self.port
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
