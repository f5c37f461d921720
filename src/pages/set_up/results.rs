//! Results at a glance.

use super::caseload;
use crate::set_up::fields::Fields;
use crate::set_up::history::row_of;
use crate::set_up::progress::adherence_told;
use crate::set_up::site::{PageError, Shown, Site};
use crate::web::pages::{ClientResults, ResultsView, results};
use progress::{Picture, Window};

const HERE: &str = "/results";
/// What is told of each client is of so many weeks.
const WEEKS: u32 = 4;
/// So many practices are listed.
const LATEST: u32 = 8;

/// `GET /results`
pub fn show(site: &Site, _query: &Fields) -> Result<Shown, PageError> {
    let mut view = ResultsView { caseload: caseload::needing(site)?, ..ResultsView::default() };
    if let Some(store) = site.store()? {
        let today = site.today();
        for client in store.clients()? {
            let picture = Picture::of(&store.practised(&client, today)?, Window::weeks(today, WEEKS));
            view.clients.push(ClientResults { told: adherence_told(site, &picture), client });
        }
        view.latest = store.history_page(None, 0, LATEST)?.iter().map(|row| row_of(site, row)).collect();
    }
    let main = site.with_texts(|texts| results(texts, &view));
    Ok(Shown::Page { here: HERE, title: site.s("page-nav-results"), main })
}
