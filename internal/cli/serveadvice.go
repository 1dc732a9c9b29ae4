package cli

import (
	"context"

	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/sheet"
	"sipsum/internal/web"
)

func (k kitchen) Fit(ctx context.Context, file web.File, wish web.Wish, draws int) (*sheet.Fitted, error) {
	by := k.with(draws)
	found, err := k.found(ctx, by, file, nil)
	if err != nil {
		return nil, err
	}
	var ask wishes
	switch {
	case wish.More:
		ask = wishes{more: wish.Quality, by: wish.By}
	case wish.Quality != "":
		ask = wishes{less: wish.Quality, by: wish.By}
	case len(found.Drink.Targets) == 0:
		return nil, fail.New(fail.Wrong, "the drink has no targets", "choose a wish, or write what it should reach: targets: [serving(SUGAR) <= 8 g]")
	}
	ready, err := ask.read()
	if err != nil {
		return nil, err
	}
	f := fitter{drinks: by}
	bench, err := f.bench(ctx, found)
	if err != nil {
		return nil, err
	}
	return f.fitted(ctx, bench, ready)
}

func (k kitchen) Swap(ctx context.Context, file web.File, ask web.Exchange, draws int) (*web.Swapped, error) {
	w := swapper{fitter{drinks: k.with(draws)}}
	x, err := swapAsked{food: ask.Food, without: ask.Without}.exchange(wishes{less: ask.Less})
	if err != nil {
		return nil, err
	}
	found, err := k.found(ctx, w.drinks, file, nil)
	if err != nil {
		return nil, err
	}
	s, err := w.swapped(ctx, found, x, ask.Without)
	if err != nil {
		return nil, err
	}
	s.Offered = true
	out := &web.Swapped{Swapped: s}
	for i := range s.Found {
		text, err := rewritten(found, file.Text, s.Exchanged, i)
		if err != nil {
			text = nil // it can be looked at, and not be taken up
		}
		out.Texts = append(out.Texts, string(text))
	}
	return out, nil
}

func (k kitchen) Weigh(ctx context.Context, file web.File, claim drink.Claim, draws int) ([]claims.Said, error) {
	by := k.with(draws)
	found, err := k.found(ctx, by, file, &claim)
	if err != nil {
		return nil, err
	}
	s, err := by.calculate(ctx, found, asked{claims: true}, nil)
	if err != nil {
		return nil, err
	}
	return s.Said, nil
}
