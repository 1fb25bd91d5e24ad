# What the page says before a script of its own speaks.

page-description = Work out a skin-care formula on your own device: what is really in the jar, and what to weigh.
page-skip = Skip to the page
page-bare = The look of this page did not arrive. Load it again once there is a network.
page-rooms = Places
page-what = Turn a percent formula into a batch you can weigh, and see what would spoil, separate or crystallise.
page-opening = Opening your notebook…
page-late = This takes long: a part of Stillroom may not have arrived. Check the network, then { $link }. If a link to a formula brought you here, open that link again.
page-lateLink = load it again
page-noscript = Stillroom computes on your own device and needs JavaScript to do so. Nothing you type leaves it.
page-manifest--name = Stillroom
page-manifest--description = Work out a skin-care formula: what is really in the jar, and what to weigh.
