export const en = {
  places: { Today: 'Today', 'Field book': 'Field book', Plan: 'Plan' },
  frame: {
    places: 'Places',
    settings: 'Settings',
    photo: 'Photo',
    read: 'Read',
    whatsLeft: "What's left",
    copies: 'Copies',
    youWereHere: 'You were here',
    undo: 'Undo',
    redo: 'Redo',
    close: 'Close',
    noAnswer: 'The field book on this device does not answer. All that is drawn is kept.',
    tryAgain: 'Try again',
  },
};
